// How a fabric of any colour is drawn: the same rules by which its pictures were made (WCAG 2.2 contrast).
(() => {
  "use strict";
  const DARK_INK = "#2b2320", PALE_INK = "#fbf4e6", WARM_LINE = "#4b3a31", PALE_LINE = "#f1e3cc", BACK = "#fffaf0";
  const FOR_TEXT = 4.5, FOR_LINES = 3;

  const parts = (colour) => [1, 3, 5].map((start) => parseInt(colour.slice(start, start + 2), 16));
  const written = (rgb) => "#" + rgb.map((part) => part.toString(16).padStart(2, "0")).join("");
  const linear = (part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4);

  function luminance(colour) {
    const [red, green, blue] = parts(colour).map((part) => linear(part / 255));
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
  }
  function contrast(one, other) {
    const [dark, light] = [luminance(one), luminance(other)].sort((a, b) => a - b);
    return (light + 0.05) / (dark + 0.05);
  }
  function mixed(one, other, share) {
    const [a, b] = [parts(one), parts(other)];
    return written(a.map((part, n) => Math.round(part * (1 - share) + b[n] * share + 1e-9)));
  }
  function readable(background, candidates, least) {
    return [...candidates, "#000000", "#ffffff"].find((one) => contrast(one, background) >= least)
      ?? (luminance(background) > 0.18 ? "#000000" : "#ffffff");
  }
  /** How light a colour looks, 0 to 100 (CIE 1976 L*). */
  function lightness(colour) {
    const y = luminance(colour);
    return y <= 216 / 24389 ? (y * 24389) / 27 : 116 * Math.cbrt(y) - 16;
  }
  function look(colour) {
    const wrong = mixed(colour, BACK, 0.62);
    const line = readable(colour, [WARM_LINE, PALE_LINE], FOR_LINES);
    const wrongLine = readable(wrong, [WARM_LINE, PALE_LINE], FOR_LINES);
    return {
      "": colour,
      "-ink": readable(colour, [DARK_INK, PALE_INK], FOR_TEXT),
      "-line": line,
      "-mark": mixed(colour, line, 0.3),
      "-wrong": wrong,
      "-wrong-ink": readable(wrong, [DARK_INK, PALE_INK], FOR_TEXT),
      "-wrong-line": wrongLine,
      "-wrong-mark": mixed(wrong, wrongLine, 0.28),
    };
  }
  evenseamReader.looks = { look, contrast, mixed, lightness, parts, written, readable, luminance, DARK_INK, PALE_INK, FOR_TEXT };
})();
