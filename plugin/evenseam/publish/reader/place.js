// The way to another size or edition keeps the reader's step, and the edition she chose is remembered.
(() => {
  "use strict";
  const { memory, onPage } = evenseamReader;
  const EDITION = "edition";

  function stepInView(page) {
    const above = [...page.querySelectorAll(".step > [id]")].filter((one) => one.getBoundingClientRect().top < innerHeight / 2);
    const last = above.at(-1);
    return last && last.parentElement.getBoundingClientRect().bottom > 0 ? last.id : "";
  }

  // Before the click is acted on, also by a theme that swaps pages, and also for a new window.
  function lead(event) {
    const link = event.target.closest?.(".switch a");
    const page = link?.closest(".pattern-page");
    if (!page) return;
    const step = stepInView(page) || page.dataset.came || "";
    link.hash = step;
    if (link.dataset.edition) memory.write(EDITION, link.dataset.edition);
  }
  for (const kind of ["pointerdown", "click", "auxclick"]) document.addEventListener(kind, lead, true);

  // A site read from a disk has no server that finds the page in a folder.
  function findPage(event) {
    const link = event.target.closest?.("a[href]");
    if (location.protocol !== "file:" || link?.protocol !== "file:" || !link.pathname.endsWith("/")) return;
    link.pathname += "index.html";
  }
  for (const kind of ["pointerdown", "click", "auxclick"]) document.addEventListener(kind, findPage, true);

  onPage((page) => {
    // Those who come to a size at one of its steps are at that step, though the switch stands at the top.
    if (location.hash.startsWith("#step-")) page.dataset.came = location.hash.slice(1);
    const edition = memory.read(EDITION);
    if (typeof edition !== "string") return;
    for (const sizes of page.querySelectorAll("ul.sizes")) sizes.dataset.prefers = edition;
    for (const link of page.querySelectorAll(".size-editions a")) {
      link.classList.toggle("is-preferred", link.dataset.edition === edition);
    }
  });
})();
