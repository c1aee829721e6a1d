// The reading view: large words that scroll at the pace of the script; keys, and pedals that send them.
globalThis.plumelineReading = (root) => {
  const words = root.querySelector('.reading-words');
  const lines = [...words.querySelectorAll('[data-seconds]')];
  const play = root.querySelector('[data-do="play"]');
  const told = root.querySelector('.reading-told');
  const lengths = lines.map((line) => Number(line.dataset.seconds));
  const starts = lengths.map((_, i) => lengths.slice(0, i).reduce((sum, one) => sum + one, 0));
  const whole = lengths.reduce((sum, one) => sum + one, 0);
  const sizes = [28, 36, 44, 56, 68, 84, 104];
  // As large as leaves some words a row, to begin with.
  const fitting = sizes.filter((one) => one <= words.clientWidth / 11).length - 1;
  let size = Math.min(3, Math.max(0, fitting));
  let speed = 100;
  let time = 0;
  let frame = 0;
  let last = 0;

  const clock = (seconds) => {
    const rest = Math.round(seconds);
    return `${Math.floor(rest / 60)}:${String(rest % 60).padStart(2, '0')}`;
  };
  const lineAt = (moment) => {
    const next = starts.findIndex((start) => start > moment + 1e-6);
    return next < 0 ? lines.length - 1 : Math.max(0, next - 1);
  };
  // A line is read at a third of the height.
  const topOf = (i) => lines[i].offsetTop - words.clientHeight / 3;
  const endOf = (i) => (i + 1 < lines.length ? topOf(i + 1) : topOf(i) + lines[i].offsetHeight);

  function show() {
    if (lines.length === 0) return;
    const i = lineAt(time);
    const share = lengths[i] > 0 ? Math.min(1, (time - starts[i]) / lengths[i]) : 0;
    words.scrollTop = topOf(i) + share * (endOf(i) - topOf(i));
    lines.forEach((line, k) => line.classList.toggle('now', k === i));
    told.textContent = `${clock(time)} of ${clock(whole)}, pace ${speed} %`;
  }
  function set() {
    words.style.fontSize = `${sizes[size]}px`;
    show();
  }
  function stop() {
    cancelAnimationFrame(frame);
    frame = 0;
    play.textContent = 'Play';
    play.setAttribute('aria-pressed', 'false');
  }
  function step(now) {
    time += (((now - last) / 1000) * speed) / 100;
    last = now;
    if (time >= whole) {
      time = whole;
      show();
      return stop();
    }
    show();
    frame = requestAnimationFrame(step);
  }
  function start() {
    if (lines.length === 0) return;
    if (time >= whole) time = 0;
    last = performance.now();
    play.textContent = 'Pause';
    play.setAttribute('aria-pressed', 'true');
    frame = requestAnimationFrame(step);
  }
  function goTo(i) {
    time = starts[Math.min(lines.length - 1, Math.max(0, i))] ?? 0;
    show();
  }
  function back() {
    const i = lineAt(time);
    // Back to the beginning of the line first, as a player does.
    goTo(time - starts[i] > 1 ? i : i - 1);
  }
  const does = {
    play: () => (frame === 0 ? start() : stop()),
    next: () => goTo(lineAt(time) + 1),
    back,
    first: () => goTo(0),
    larger: () => {
      size = Math.min(sizes.length - 1, size + 1);
      set();
    },
    smaller: () => {
      size = Math.max(0, size - 1);
      set();
    },
    faster: () => {
      speed = Math.min(200, speed + 5);
      show();
    },
    slower: () => {
      speed = Math.max(50, speed - 5);
      show();
    },
    mirror: () => {
      const on = root.classList.toggle('mirrored');
      root.querySelector('[data-do="mirror"]').setAttribute('aria-pressed', String(on));
    },
    close: () => root.dispatchEvent(new CustomEvent('reading-closed')),
  };
  const keys = {
    ' ': 'play',
    PageDown: 'next',
    ArrowDown: 'next',
    ArrowRight: 'next',
    PageUp: 'back',
    ArrowUp: 'back',
    ArrowLeft: 'back',
    Home: 'first',
    '+': 'larger',
    '=': 'larger',
    '-': 'smaller',
    ']': 'faster',
    '[': 'slower',
    m: 'mirror',
    Escape: 'close',
  };
  function onKey(event) {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const what = keys[event.key];
    if (what === undefined) return;
    // A button that has the focus is pressed by the space bar itself.
    if (event.key === ' ' && event.target instanceof HTMLButtonElement) return;
    event.preventDefault();
    event.stopPropagation();
    does[what]();
  }
  function onClick(event) {
    const what = event.target.closest('[data-do]')?.dataset.do;
    if (what !== undefined) does[what]?.();
  }
  addEventListener('keydown', onKey, true);
  addEventListener('resize', set);
  root.addEventListener('click', onClick);
  set();
  return () => {
    stop();
    removeEventListener('keydown', onKey, true);
    removeEventListener('resize', set);
    root.removeEventListener('click', onClick);
  };
};
for (const root of document.querySelectorAll('[data-reading-alone]')) globalThis.plumelineReading(root);
