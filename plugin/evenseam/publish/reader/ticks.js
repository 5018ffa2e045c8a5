// Ticks of steps and cuts, kept on this device for one size and edition of a pattern.
(() => {
  "use strict";
  const { memory, onPage, onClick, pageOf, say, fill } = evenseamReader;
  const keyOf = (page) => `ticks:${page.dataset.pattern}:${page.dataset.size}:${page.dataset.edition}`;

  function read(page) {
    const kept = memory.read(keyOf(page));
    const done = kept && Array.isArray(kept.done) ? kept.done.filter((id) => typeof id === "string") : [];
    // Steps keep their names from version to version; the order of cuts may not.
    return new Set(kept?.version === page.dataset.version ? done : done.filter((id) => id.startsWith("step-")));
  }

  function count(page) {
    const steps = [...page.querySelectorAll('.tick[data-tick^="step-"]')];
    const done = steps.filter((tick) => tick.checked).length;
    for (const place of page.querySelectorAll("[data-done]")) {
      place.textContent = fill(place.dataset.done, { done, all: steps.length });
    }
  }

  function keep(page) {
    const done = [...page.querySelectorAll(".tick:checked")].map((tick) => tick.dataset.tick);
    memory.write(keyOf(page), { version: page.dataset.version, done });
    count(page);
  }

  onPage((page) => {
    if (!page.dataset.size) return;
    const done = read(page);
    for (const tick of page.querySelectorAll(".tick")) tick.checked = done.has(tick.dataset.tick);
    count(page);
  });

  document.addEventListener("change", (event) => {
    if (event.target.matches?.(".tick")) keep(pageOf(event.target));
  });

  // Another window with the same page ticks along.
  addEventListener("storage", (event) => {
    for (const page of document.querySelectorAll(".pattern-page[data-size]")) {
      if (event.key !== `evenseam:1:${keyOf(page)}`) continue;
      const done = read(page);
      for (const tick of page.querySelectorAll(".tick")) tick.checked = done.has(tick.dataset.tick);
      count(page);
    }
  });

  onClick("[data-do=untick]", (event, button) => {
    const page = pageOf(button);
    for (const tick of page.querySelectorAll(".tick")) tick.checked = false;
    memory.forget(keyOf(page));
    count(page);
    say(button, button.dataset.said);
  });
})();
