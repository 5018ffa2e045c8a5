// A photo of the reader's own fabric fills its patches. It never leaves the device.
(() => {
  "use strict";
  const { pageOf, looks } = evenseamReader;
  const SIDE = 96;
  const NS = "http://www.w3.org/2000/svg";

  /** Return the middle of a photo as a small square. */
  async function square(file) {
    const photo = await createImageBitmap(file);
    const side = Math.min(photo.width, photo.height);
    const canvas = Object.assign(document.createElement("canvas"), { width: SIDE, height: SIDE });
    const context = canvas.getContext("2d", { willReadFrequently: true });
    context.drawImage(photo, (photo.width - side) / 2, (photo.height - side) / 2, side, side, 0, 0, SIDE, SIDE);
    return { canvas, context };
  }

  function average(context) {
    const { data } = context.getImageData(0, 0, SIDE, SIDE);
    const sum = [0, 0, 0];
    for (let n = 0; n < data.length; n += 4) for (const part of [0, 1, 2]) sum[part] += data[n + part];
    return looks.written(sum.map((part) => Math.round(part / (data.length / 4))));
  }

  /** Tell which share of the photo a letter of this ink could not be read on. */
  function unreadable(context, ink) {
    const { data } = context.getImageData(0, 0, SIDE, SIDE);
    let bad = 0, all = 0;
    for (let n = 0; n < data.length; n += 4 * 7) {
      all += 1;
      bad += looks.contrast(looks.written([data[n], data[n + 1], data[n + 2]]), ink) < looks.FOR_TEXT;
    }
    return bad / all;
  }

  /** Calm a photo, towards its average colour, until letters can be read on it; return the colour of the letters. */
  function calm(context, colour) {
    const ink = looks.look(colour)["-ink"];
    context.fillStyle = colour;
    context.globalAlpha = 0.3;
    for (let tries = 0; tries < 12 && unreadable(context, ink) > 0.005; tries += 1) context.fillRect(0, 0, SIDE, SIDE);
    context.globalAlpha = 1;
    return ink;
  }

  function fillOf(page, id) {
    let shelf = page.querySelector("svg.photo-shelf");
    if (!shelf) {
      shelf = document.createElementNS(NS, "svg");
      shelf.setAttribute("class", "photo-shelf");
      shelf.setAttribute("width", "0");
      shelf.setAttribute("height", "0");
      shelf.setAttribute("aria-hidden", "true");
      page.append(shelf);
    }
    shelf.querySelector(`#photo-${CSS.escape(id)}`)?.remove();
    const pattern = document.createElementNS(NS, "pattern");
    for (const [name, value] of Object.entries({ id: `photo-${id}`, width: 60, height: 60, patternUnits: "userSpaceOnUse" })) {
      pattern.setAttribute(name, value);
    }
    shelf.append(pattern);
    return pattern;
  }

  async function take(row, file) {
    const page = pageOf(row), id = row.dataset.fabric;
    const { canvas, context } = await square(file);
    const colour = average(context);
    calm(context, colour);
    const pattern = fillOf(page, id);
    const ground = document.createElementNS(NS, "rect");
    const image = document.createElementNS(NS, "image");
    for (const part of [ground, image]) for (const side of ["width", "height"]) part.setAttribute(side, 60);
    ground.setAttribute("fill", colour);
    image.setAttribute("href", canvas.toDataURL("image/jpeg", 0.85));
    pattern.append(ground, image);
    row.querySelector("input[type=color]").value = colour;
    row.photo = true;
    evenseamReader.fabrics.colour(page, id, colour);
    page.style.setProperty(`--fabric-${id}`, `url(#photo-${id}) ${colour}`);
    // The fabric has its own print now; no marks are drawn over it.
    page.style.setProperty(`--fabric-${id}-mark`, "none");
    evenseamReader.fabrics.hint(page);
    evenseamReader.fabrics.keep(page);
  }

  evenseamReader.dropPhoto = (page, row) => {
    row.photo = false;
    page.querySelector(`#photo-${CSS.escape(row.dataset.fabric)}`)?.remove();
    const field = row.querySelector("input[type=file]");
    if (field) field.value = "";
  };

  document.addEventListener("change", async (event) => {
    if (!event.target.matches?.(".fabric-choices input[type=file]") || !event.target.files[0]) return;
    const row = event.target.closest("[data-fabric]");
    try { await take(row, event.target.files[0]); } catch { evenseamReader.dropPhoto(pageOf(row), row); }
  });
})();
