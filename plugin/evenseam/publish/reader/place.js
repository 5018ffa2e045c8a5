// The way to another size or edition keeps the reader's step, and the edition she chose is remembered.
(() => {
  "use strict";
  const { memory, onPage } = evenseamReader;
  const EDITION = "edition";

  // The last step or heading above the middle of the screen; nothing at the top of the page.
  function placeInView(page) {
    const places = [...page.querySelectorAll(".step > [id], .pattern-text > :is(h2, h3, h4)[id]")];
    return places.findLast((one) => one.getBoundingClientRect().top < innerHeight / 2)?.id ?? "";
  }

  // Before the click is acted on, also by a theme that swaps pages, and also for a new window.
  function lead(event) {
    const link = event.target.closest?.(".switch a, .step-bar a");
    const page = link?.closest(".pattern-page");
    if (!page) return;
    // Who went up to the switch at the top is still at the place she came to.
    link.hash = (link.closest(".switch") && page.dataset.came) || placeInView(page);
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
    if (/^#[\w-]+$/.test(location.hash)) page.dataset.came = location.hash.slice(1);
    const edition = memory.read(EDITION);
    if (typeof edition !== "string") return;
    for (const sizes of page.querySelectorAll("ul.sizes")) sizes.dataset.prefers = edition;
    for (const link of page.querySelectorAll(".size-editions a")) {
      link.classList.toggle("is-preferred", link.dataset.edition === edition);
    }
  });
})();
