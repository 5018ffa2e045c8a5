// The width of the reader's fabric: the style does the switching, this remembers the choice for each edition.
(() => {
  "use strict";
  const { memory, onPage, pageOf } = evenseamReader;
  const keyOf = (page) => `cloth:${page.dataset.edition}`;

  onPage((page) => {
    const kept = memory.read(keyOf(page));
    for (const choice of page.querySelectorAll("input[name=cloth]")) if (choice.value === kept) choice.checked = true;
  });
  document.addEventListener("change", (event) => {
    if (event.target.matches?.("input[name=cloth]")) memory.write(keyOf(pageOf(event.target)), event.target.value);
  });
  // Another window with the same edition follows.
  addEventListener("storage", (event) => {
    for (const page of document.querySelectorAll(".pattern-page[data-size]")) {
      if (event.key !== `evenseam:1:${keyOf(page)}`) continue;
      const kept = memory.read(keyOf(page));
      for (const choice of page.querySelectorAll("input[name=cloth]")) if (choice.value === kept) choice.checked = true;
    }
  });
})();
