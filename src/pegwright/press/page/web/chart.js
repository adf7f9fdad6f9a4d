"use strict";
const place = "rows:" + document.title;
const boxes = [...document.querySelectorAll("input[data-row]")];
function kept() {
  try {
    return new Set(JSON.parse(localStorage.getItem(place) || "[]"));
  } catch {
    return new Set();
  }
}
const ticked = kept();
for (const box of boxes) {
  box.checked = ticked.has(box.dataset.row);
  box.addEventListener("change", () => {
    const now = boxes.filter((one) => one.checked).map((one) => one.dataset.row);
    try {
      localStorage.setItem(place, JSON.stringify(now));
    } catch {
      // A page that may keep nothing still works.
    }
  });
}
