"use strict";
const search = document.getElementById("search");
const count = document.getElementById("count");
const none = document.getElementById("none");
const cards = [...document.querySelectorAll("article")];
function narrow() {
  const words = search.value.toLowerCase().split(/\s+/).filter(Boolean);
  let shown = 0;
  for (const card of cards) {
    const fits = words.every((word) => card.dataset.words.includes(word));
    card.hidden = !fits;
    shown += fits ? 1 : 0;
  }
  count.textContent = count.dataset.words.replace("{n}", String(shown));
  none.hidden = shown > 0;
}
search.addEventListener("input", narrow);
narrow();
