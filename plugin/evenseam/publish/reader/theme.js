// What the theme leaves unsaid to those who listen to a page or go by keyboard.
(() => {
  "use strict";
  function mend() {
    for (const search of document.querySelectorAll(".md-search[role=dialog]:not([aria-label])")) {
      const name = search.querySelector("input[aria-label]")?.getAttribute("aria-label");
      if (name) search.setAttribute("aria-label", name);
    }
    // Wide tables scroll; without a stop of the tab key they scroll for a mouse only.
    for (const wide of document.querySelectorAll(".md-typeset__scrollwrap:not([tabindex])")) wide.tabIndex = 0;
    // A list of pages that is led by a page of its own takes its name from an element without words.
    for (const list of document.querySelectorAll("nav.md-nav[aria-labelledby]")) {
      const label = document.getElementById(list.getAttribute("aria-labelledby"));
      const name = list.querySelector(":scope > .md-nav__title")?.textContent.trim();
      if (label?.textContent.trim() || !name) continue;
      list.removeAttribute("aria-labelledby");
      list.setAttribute("aria-label", name);
    }
  }
  mend();
  new MutationObserver(mend).observe(document.documentElement, { childList: true, subtree: true });
})();
