// The finished piece in the reader's fabrics, as a PNG.
(() => {
  "use strict";
  const { onClick, pageOf, say } = evenseamReader;
  const WIDTH = 1600;

  /** Return a copy of a picture that needs no style from outside. */
  function alone(svg, page) {
    const copy = svg.cloneNode(true);
    const [from, to] = [svg, copy].map((one) => [one, ...one.querySelectorAll("*")]);
    from.forEach((part, n) => {
      for (const name of ["fill", "stroke"]) {
        if (part.getAttribute(name)?.includes("var(")) to[n].setAttribute(name, getComputedStyle(part)[name].replaceAll(/url\("[^"#]*#/g, 'url("#'));
      }
    });
    for (const pattern of page.querySelectorAll(".photo-shelf pattern")) copy.append(pattern.cloneNode(true));
    copy.setAttribute("font-family", getComputedStyle(svg).fontFamily);
    return copy;
  }

  async function png(page) {
    const svg = page.querySelector("figure.hero svg, figure[data-picture=finished] svg");
    const { width, height } = svg.viewBox.baseVal;
    const copy = alone(svg, page);
    copy.setAttribute("width", WIDTH);
    copy.setAttribute("height", Math.round((WIDTH * height) / width));
    const image = new Image();
    image.src = "data:image/svg+xml;charset=utf-8," + encodeURIComponent(new XMLSerializer().serializeToString(copy));
    await image.decode();
    const canvas = Object.assign(document.createElement("canvas"), { width: WIDTH, height: Math.round((WIDTH * height) / width) });
    const context = canvas.getContext("2d");
    context.fillStyle = getComputedStyle(svg).getPropertyValue("--figure-ground").trim() || "#ffffff";
    context.fillRect(0, 0, canvas.width, canvas.height);
    context.drawImage(image, 0, 0, canvas.width, canvas.height);
    return new Promise((done, fail) => canvas.toBlob((blob) => (blob ? done(blob) : fail(new Error("no picture")))));
  }

  onClick("[data-do=fabric-picture]", async (event, button) => {
    const page = pageOf(button);
    try {
      const address = URL.createObjectURL(await png(page));
      Object.assign(document.createElement("a"), { href: address, download: `${page.dataset.pattern}.png` }).click();
      setTimeout(() => URL.revokeObjectURL(address), 1000);
      say(button, button.dataset.said);
    } catch {
      say(button, button.dataset.refused);
    }
  });
})();
