// Keeps ticked boxes in this browser, under the book's name and issue. A box whose line has changed starts empty.
(() => {
  const place = `job-book ticks: ${document.documentElement.dataset.book}`;
  const boxes = [...document.querySelectorAll('input[data-tick]')];
  const note = document.querySelector('.kept');
  const keep = () => {
    const ticked = boxes.filter(box => box.checked).map(box => box.dataset.tick);
    try {
      localStorage.setItem(place, JSON.stringify(ticked));
    } catch {
      note.hidden = true;
    }
  };
  let kept;
  try {
    kept = new Set(JSON.parse(localStorage.getItem(place)) || []);
  } catch {
    return;
  }
  for (const box of boxes) {
    box.checked = kept.has(box.dataset.tick);
    box.addEventListener('change', keep);
  }
  note.hidden = boxes.length === 0;
  note.querySelector('button').addEventListener('click', () => {
    for (const box of boxes) box.checked = false;
    keep();
  });
})();
