// From step to step, and a screen that stays awake beside the sewing machine.
(() => {
  "use strict";
  const { onPage, onClick, pageOf, say } = evenseamReader;
  const TOP = 120; // Pixels below the top edge at which a step counts as the one being read.
  let lock = null;
  let isWanted = false;

  const headings = (page) => [...page.querySelectorAll(".step > :is(h2, h3, h4, h5, h6)[id]")];

  // The step gone to last, while it is still in the upper half of the screen: steps are laid out as they come near, so
  // that a heading may lie a little off the place it was scrolled to. Otherwise the last one above the reader's line.
  function here(page) {
    const all = headings(page);
    const focused = all.indexOf(document.activeElement);
    if (focused >= 0) {
      const { top, bottom } = all[focused].getBoundingClientRect();
      if (bottom > 0 && top < innerHeight / 2) return focused;
    }
    return all.filter((heading) => heading.getBoundingClientRect().top <= TOP).length - 1;
  }

  function go(page, by) {
    const all = headings(page);
    const goal = all[Math.min(Math.max(here(page) + by, 0), all.length - 1)];
    if (!goal) return;
    goal.tabIndex = -1;
    goal.focus({ preventScroll: true });
    goal.scrollIntoView({ block: "start" });
    requestAnimationFrame(() => { if (document.activeElement === goal) goal.scrollIntoView({ block: "start" }); });
  }

  onClick("[data-do=next]", (event, button) => go(pageOf(button), 1));
  onClick("[data-do=previous]", (event, button) => go(pageOf(button), -1));

  // With the Alt key, so that no letter typed anywhere and no key of the theme is taken.
  document.addEventListener("keydown", (event) => {
    if (!event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return;
    if (event.key !== "ArrowDown" && event.key !== "ArrowUp") return;
    if (event.target.closest?.("select, textarea, dialog, [contenteditable], input:not([type=checkbox])")) return;
    const page = document.querySelector(".pattern-page[data-size]");
    if (!page || document.querySelector("dialog[open]")) return;
    event.preventDefault();
    go(page, event.key === "ArrowDown" ? 1 : -1);
  });

  function show() {
    for (const button of document.querySelectorAll("[data-do=awake]")) {
      button.setAttribute("aria-pressed", String(Boolean(lock)));
    }
  }

  async function hold() {
    try {
      lock = await navigator.wakeLock.request("screen");
      lock.addEventListener("release", () => { lock = null; show(); });
    } catch {
      lock = null;
      isWanted = false;
    }
    show();
  }

  onPage((page) => {
    for (const tools of page.querySelectorAll(".reader-tools, .step-bar")) tools.hidden = false;
    if (!("wakeLock" in navigator)) for (const button of page.querySelectorAll("[data-do=awake]")) button.hidden = true;
    show();
  });

  onClick("[data-do=awake]", async (event, button) => {
    isWanted = !lock;
    if (lock) await lock.release(); else await hold();
    say(button, lock ? button.dataset.on : isWanted ? button.dataset.refused : button.dataset.off);
    isWanted = Boolean(lock);
  });
  // The browser lets go when the page is hidden; it is taken up again when the reader comes back.
  document.addEventListener("visibilitychange", () => {
    if (isWanted && !lock && document.visibilityState === "visible") hold();
  });

  onClick("[data-do=print]", () => print());
})();
