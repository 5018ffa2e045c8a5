// Why a figure is what it is: every figure with a name opens a small window.
(() => {
  "use strict";
  const { onPage, onClick, pageOf } = evenseamReader;
  const known = new WeakMap();
  const FIGURE = '.measured[role="button"]';

  onPage((page) => {
    const data = page.querySelector("template.why-data");
    if (!data || !page.querySelector("dialog.why")) return;
    let figures;
    try { figures = JSON.parse(data.content.textContent); } catch { return; }
    known.set(page, figures);
    const begun = new Set();
    for (const figure of page.querySelectorAll(".measured[data-figure]")) {
      if (!Object.hasOwn(figures, figure.dataset.figure)) continue;
      figure.setAttribute("role", "button");
      figure.setAttribute("aria-haspopup", "dialog");
      // One stop of the tab key for each item, row or paragraph; the arrow keys lead on from there.
      const run = figure.closest("li, tr, p") ?? figure.parentElement;
      figure.tabIndex = begun.has(run) ? -1 : 0;
      begun.add(run);
    }
  });

  function fill(dialog, part, words) {
    const place = dialog.querySelector(`[data-why=${part}]`);
    place.textContent = words ?? "";
    const row = place.closest("div");
    if (row) row.hidden = !words;
  }

  function open(figure) {
    const page = pageOf(figure);
    const about = known.get(page)?.[figure.dataset.figure];
    if (!about) return;
    const dialog = page.querySelector("dialog.why");
    for (const part of ["name", "value", "because", "rule", "source", "place"]) fill(dialog, part, about[part]);
    const list = dialog.querySelector("[data-why=from]");
    list.replaceChildren(...(about.from ?? []).map(([name, value]) => {
      const item = document.createElement("li");
      item.textContent = `${name}: ${value}`;
      return item;
    }));
    list.closest("div").hidden = !about.from?.length;
    dialog.showModal();
  }

  onClick(FIGURE, (event, figure) => open(figure));
  // A click beside the window closes it; the window itself is filled by its first child.
  onClick("dialog.why", (event, dialog) => { if (event.target === dialog) dialog.close(); });
  onClick("dialog.why [data-do=close]", (event, button) => button.closest("dialog").close());

  document.addEventListener("keydown", (event) => {
    const figure = event.target.closest?.(FIGURE);
    if (!figure || event.altKey || event.ctrlKey || event.metaKey) return;
    if (event.key === "Enter" || event.key === " ") {
      event.preventDefault();
      open(figure);
    } else if (event.key === "ArrowRight" || event.key === "ArrowLeft") {
      event.preventDefault();
      const all = [...pageOf(figure).querySelectorAll(FIGURE)].filter((one) => one.checkVisibility());
      all[all.indexOf(figure) + (event.key === "ArrowRight" ? 1 : -1)]?.focus();
    }
  });
})();
