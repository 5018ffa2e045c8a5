// The shopping list as plain text, to paste into a message.
(() => {
  "use strict";
  const { onClick, pageOf, say, fill } = evenseamReader;
  const words = (element) => element.textContent.replace(/\s+/g, " ").trim();

  function list(page) {
    const lines = [words(page.querySelector("h1")), words(page.querySelector(".subtitle")), ""];
    const add = (part) => {
      if (part.matches(".at-width")) { if (part.checkVisibility()) [...part.children].forEach(add); return; }
      const items = part.matches("ul, ol") ? [...part.children] : part.matches("p") ? [part] : [];
      for (const item of items) lines.push((part.matches("p") ? "" : "- ") + words(item));
    };
    const cloth = page.querySelector("input[name=cloth]:checked");
    if (cloth) lines.push(fill(cloth.closest("fieldset").dataset.listed, { width: words(cloth.closest("label")) }));
    let part = page.querySelector("#materials")?.nextElementSibling;
    for (; part && part.tagName !== "H2"; part = part.nextElementSibling) add(part);
    return lines.join("\n") + "\n";
  }

  async function copy(text) {
    try {
      await navigator.clipboard.writeText(text);
      return true;
    } catch {
      const field = document.createElement("textarea");
      field.value = text;
      document.body.append(field);
      field.select();
      const isCopied = document.execCommand("copy");
      field.remove();
      return isCopied;
    }
  }

  evenseamReader.copy = copy;
  onClick("[data-do=shopping]", async (event, button) => {
    const isCopied = await copy(list(pageOf(button)));
    say(button, isCopied ? button.dataset.said : button.dataset.refused);
  });
})();
