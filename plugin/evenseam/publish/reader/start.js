// What every other part stands on: pages that come and go, and a memory that may be missing.
const evenseamReader = (() => {
  "use strict";
  const parts = [];
  const seen = new WeakSet();

  function prepare() {
    for (const page of document.querySelectorAll(".pattern-page")) {
      if (seen.has(page)) continue;
      seen.add(page);
      for (const part of parts) part(page);
    }
  }

  // In private windows and under strict settings the memory may refuse; then the page forgets, and works.
  const memory = {
    read(key) {
      try { return JSON.parse(localStorage.getItem(`evenseam:1:${key}`)); } catch { return null; }
    },
    write(key, value) {
      try { localStorage.setItem(`evenseam:1:${key}`, JSON.stringify(value)); } catch { /* forgets */ }
    },
    forget(key) {
      try { localStorage.removeItem(`evenseam:1:${key}`); } catch { /* had nothing */ }
    },
  };

  return {
    memory,
    /** Call `part(page)` once for each pattern page that is or will be shown. */
    onPage(part) { parts.push(part); },
    /** Begin, after every part has been named. Themes that swap pages bring new ones in later. */
    begin() {
      prepare();
      new MutationObserver(prepare).observe(document.documentElement, { childList: true, subtree: true });
    },
    /** Call `act(event, element)` when something inside a match of `query` is clicked. */
    onClick(query, act) {
      document.addEventListener("click", (event) => {
        const found = event.target.closest?.(query);
        if (found) act(event, found);
      });
    },
    /** Say something to the reader where the page has a place for it. */
    say(element, words) {
      const place = element.closest(".pattern-page")?.querySelector(".reader-said");
      if (place) place.textContent = words;
    },
    /** Put values into the {places} of words. */
    fill(words, values) { return words.replace(/\{(\w+)\}/g, (place, name) => values[name] ?? place); },
    pageOf(element) { return element.closest(".pattern-page"); },
  };
})();
globalThis.evenseamReader = evenseamReader;
