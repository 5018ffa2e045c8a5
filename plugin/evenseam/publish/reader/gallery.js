// Choosing among patterns: cards that do not fit are put out of sight.
(() => {
  "use strict";
  function choose(form) {
    const gallery = form.parentElement.querySelector("ul.gallery");
    if (!gallery) return;
    const wanted = [...form.querySelectorAll("[data-filter]")].map((field) => [
      field.dataset.filter, field.type === "checkbox" ? (field.checked ? "yes" : "") : field.value,
    ]).filter(([, value]) => value);
    let shown = 0;
    for (const card of gallery.children) {
      const fits = wanted.every(([name, value]) => (card.getAttribute(`data-${name}`) ?? "").split("|").includes(value));
      card.hidden = !fits;
      shown += fits;
    }
    const told = form.querySelector("[data-shown]");
    told.textContent = wanted.length ? evenseamReader.fill(told.dataset.shown, { shown, all: gallery.children.length }) : "";
  }
  document.addEventListener("change", (event) => {
    const form = event.target.closest?.(".gallery-filters");
    if (form) choose(form);
  });
  document.addEventListener("reset", (event) => {
    if (event.target.matches(".gallery-filters")) setTimeout(() => choose(event.target));
  });
  // A gallery may also stand in a page of the site's own.
  function show() {
    for (const form of document.querySelectorAll(".gallery-filters[hidden]")) form.hidden = false;
  }
  show();
  new MutationObserver(show).observe(document.documentElement, { childList: true, subtree: true });
})();
evenseamReader.begin();
