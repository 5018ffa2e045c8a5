// Try your fabrics: the reader's colours in place of the pattern's, on this page and in a link.
(() => {
  "use strict";
  const { memory, onPage, onClick, pageOf, say, fill, looks } = evenseamReader;
  const NEAR = 10; // Steps of lightness (CIE 1976 L*) below which an edge is hard to see: our own measure.
  const COLOUR = /^#[0-9a-f]{6}$/;
  const keyOf = (page) => `fabrics:${page.dataset.pattern}`;
  const rows = (page) => [...page.querySelectorAll(".fabric-choices [data-fabric]")];
  const isChanged = (row) => row.querySelector("input[type=color]").value !== row.dataset.colour;
  const chosen = (page) => Object.fromEntries(rows(page).filter(isChanged)
    .map((row) => [row.dataset.fabric, row.querySelector("input[type=color]").value]));

  function colour(page, id, value) {
    for (const [part, look] of Object.entries(looks.look(value))) page.style.setProperty(`--fabric-${id}${part}`, look);
  }
  function plain(page, id) {
    for (const part of Object.keys(looks.look("#000000"))) page.style.removeProperty(`--fabric-${id}${part}`);
  }

  function hint(page) {
    const all = rows(page);
    const near = [];
    for (const [n, row] of all.entries()) {
      const light = looks.lightness(row.querySelector("input[type=color]").value);
      const told = row.querySelector(".fabric-grey");
      told.textContent = Math.round(light);
      for (const other of all.slice(n + 1)) {
        const gap = Math.abs(light - looks.lightness(other.querySelector("input[type=color]").value));
        // What the designer put side by side is her business.
        if (gap < NEAR && [row, other].some(isChanged)) near.push([row.dataset.name, other.dataset.name]);
      }
    }
    const place = page.querySelector(".fabric-hint");
    const pairs = near.map(([one, other]) => fill(place.dataset.pair, { one, other }));
    place.textContent = pairs.length ? fill(place.dataset.near, { pairs: pairs.join("; ") }) : "";
  }

  /** Show the colours that stand in the panel. */
  function show(page) {
    for (const row of rows(page)) {
      const value = row.querySelector("input[type=color]").value;
      if (row.photo) continue;
      if (value === row.dataset.colour) plain(page, row.dataset.fabric);
      else colour(page, row.dataset.fabric, value);
    }
    hint(page);
  }

  function put(page, colours) {
    for (const row of rows(page)) {
      const value = colours?.[row.dataset.fabric];
      if (typeof value === "string" && COLOUR.test(value)) row.querySelector("input[type=color]").value = value;
    }
    show(page);
  }

  // #fabrics=fog:dfe3e0,sea:1f4a63
  function fromAddress() {
    const found = /^#fabrics=(.+)$/.exec(location.hash);
    if (!found) return null;
    const pairs = decodeURIComponent(found[1]).split(",").map((pair) => pair.split(":"));
    return Object.fromEntries(pairs.map(([id, value]) => [id, `#${value}`]));
  }

  function asAddress(page) {
    const pairs = Object.entries(chosen(page)).map(([id, value]) => `${id}:${value.slice(1)}`);
    return location.href.split("#")[0] + (pairs.length ? `#fabrics=${pairs.join(",")}` : "");
  }

  function keep(page) {
    const colours = chosen(page);
    if (Object.keys(colours).length) memory.write(keyOf(page), { colours });
    else memory.forget(keyOf(page));
  }

  onPage((page) => {
    const panel = page.querySelector(".try-fabrics");
    if (!panel) return;
    panel.hidden = false;
    let linked = null;
    try { linked = fromAddress(); } catch { /* not one of our addresses */ }
    if (linked) panel.open = true;
    put(page, linked ?? memory.read(keyOf(page))?.colours);
  });
  addEventListener("hashchange", () => {
    const page = document.querySelector(".pattern-page");
    let linked = null;
    try { linked = fromAddress(); } catch { /* not one of our addresses */ }
    if (page && linked) put(page, linked);
  });

  document.addEventListener("input", (event) => {
    const row = event.target.matches?.(".fabric-choices input[type=color]") && event.target.closest("[data-fabric]");
    if (!row) return;
    const page = pageOf(row);
    evenseamReader.dropPhoto?.(page, row);
    show(page);
    keep(page);
  });

  onClick("[data-do=fabric-reset]", (event, button) => {
    const page = pageOf(button);
    for (const row of rows(page)) {
      evenseamReader.dropPhoto?.(page, row);
      row.querySelector("input[type=color]").value = row.dataset.colour;
    }
    show(page);
    memory.forget(keyOf(page));
    if (location.hash.startsWith("#fabrics=")) history.replaceState(history.state, "", location.href.split("#")[0]);
    say(button, button.dataset.said);
  });
  onClick("[data-do=fabric-greys]", (event, button) => {
    const isOn = pageOf(button).classList.toggle("in-greys");
    button.setAttribute("aria-pressed", String(isOn));
  });
  onClick("[data-do=fabric-link]", async (event, button) => {
    const address = asAddress(pageOf(button));
    history.replaceState(history.state, "", address);
    say(button, (await evenseamReader.copy(address)) ? button.dataset.said : button.dataset.refused);
  });

  evenseamReader.fabrics = { show, keep, colour, hint };
})();
