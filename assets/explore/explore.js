// The page's only script: moves the pictures and numbers with the altitude, and opens what stands behind a number.
(() => {
  const data = JSON.parse(document.getElementById('data').textContent);
  const slider = document.getElementById('altitude');
  const where = document.getElementById('where');
  const play = document.getElementById('play');
  const dialog = document.getElementById('behind');
  const boxes = [...document.querySelectorAll('[data-figure]')];
  const cells = [...document.querySelectorAll('[data-cell]')];
  const last = data.stops.length - 1;
  let now = 0;
  let climbing = null;

  function show(stop) {
    now = Math.min(last, Math.max(0, stop));
    slider.value = String(now);
    slider.setAttribute('aria-valuetext', data.stops[now]);
    where.textContent = data.stops[now];
    for (const box of boxes) {
      const { parts, frames } = data.figures[box.dataset.figure];
      // Drawn by the program, every word of the study in it escaped.
      box.innerHTML = frames[now].map((part) => parts[part]).join('');
    }
    for (const cell of cells) cell.textContent = data.rows[now][Number(cell.dataset.cell)];
  }

  function stop() {
    if (climbing !== null) clearInterval(climbing);
    climbing = null;
    play.textContent = 'Climb';
    play.setAttribute('aria-pressed', 'false');
  }

  function climb() {
    if (now === last) show(0);
    play.textContent = 'Stop';
    play.setAttribute('aria-pressed', 'true');
    // Three steps a second: nothing flashes.
    climbing = setInterval(() => (now === last ? stop() : show(now + 1)), 340);
  }

  function line(list, name, text) {
    if (text === null || text === '') return;
    const term = document.createElement('dt');
    const told = document.createElement('dd');
    term.textContent = name;
    told.textContent = text;
    list.append(term, told);
  }

  function open(button) {
    const known = data.pedigrees[button.dataset.behind];
    const at = button.dataset.cell === undefined ? null : data.stops[now];
    document.getElementById('behind-title').textContent = known.label;
    const list = document.getElementById('behind-list');
    list.replaceChildren();
    line(list, 'Here', at === null ? button.textContent : `${button.textContent}, at ${at}`);
    line(list, 'Of', button.dataset.of ?? null);
    line(list, 'Meaning', known.meaning);
    line(list, 'Span', (at === null ? null : data.spans[`${now} ${button.dataset.cell}`]) ?? button.dataset.span ?? known.span);
    line(list, 'Equation', known.equation);
    line(list, 'Model', known.model);
    line(list, 'Source', known.source);
    line(list, 'Limits', known.limits);
    line(list, 'Typical error', known.error);
    dialog.showModal();
  }

  slider.addEventListener('input', () => {
    stop();
    show(Number(slider.value));
  });
  play.addEventListener('click', () => (climbing === null ? climb() : stop()));
  document.addEventListener('click', (event) => {
    const button = event.target.closest('[data-behind]');
    if (button !== null) open(button);
    if (event.target === dialog) dialog.close();
  });
  document.getElementById('close').addEventListener('click', () => dialog.close());
  slider.max = String(last);
  slider.disabled = false;
  play.hidden = last === 0;
  show(0);
})();
