import { useEffect, useLayoutEffect, useRef } from 'preact/hooks';
import { copied } from '../state/find/copied.ts';
import { choose, closeFind, findOpen, foundAll, marked, openFind, typed } from '../state/find/findBox.ts';
import type { Found } from '../state/find/found.ts';

/** One box for everything: a field with a list below it, opened by Ctrl+K or a slash. */
export function FindBox() {
  useEffect(() => {
    document.addEventListener('keydown', openByKey);
    return () => document.removeEventListener('keydown', openByKey);
  }, []);
  return findOpen.value ? <Box /> : null;
}

function openByKey(event: KeyboardEvent): void {
  const byLetter = (event.ctrlKey || event.metaKey) && !event.altKey && event.key.toLowerCase() === 'k';
  const target = event.target;
  const isWriting =
    target instanceof HTMLTextAreaElement ||
    target instanceof HTMLSelectElement ||
    (target instanceof HTMLInputElement && target.type !== 'range');
  const bySlash = event.key === '/' && !event.ctrlKey && !event.metaKey && !event.altKey && !isWriting;
  if (!byLetter && !bySlash) return;
  event.preventDefault();
  if (!findOpen.value) openFind();
}

const optionId = (index: number): string => `found-${index}`;

function Box() {
  const dialog = useRef<HTMLDialogElement>(null);
  // At once: what is typed right after the keys that open it belongs into it.
  useLayoutEffect(() => {
    dialog.current?.showModal();
  }, []);
  const all = foundAll.value;
  const at = Math.min(marked.value, all.length - 1);
  useEffect(() => document.getElementById(optionId(at))?.scrollIntoView({ block: 'nearest' }), [at, all]);

  function onKeyDown(event: KeyboardEvent) {
    const last = all.length - 1;
    if (event.key === 'ArrowDown') marked.value = at >= last ? 0 : at + 1;
    else if (event.key === 'ArrowUp') marked.value = at <= 0 ? last : at - 1;
    else if (event.key === 'PageDown') marked.value = Math.min(last, at + 5);
    else if (event.key === 'PageUp') marked.value = Math.max(0, at - 5);
    else if (event.key === 'Enter') choose(all[at], event.shiftKey);
    else return;
    event.preventDefault();
  }
  const nothing = typed.value.trim() !== '' && all.length === 0;
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: Escape closes a dialog by itself
    <dialog ref={dialog} class="find" aria-label="Find" onClose={closeFind} onClick={closeOutside}>
      <input
        id="find-field"
        type="text"
        role="combobox"
        aria-label="Find numbers, sentences, figures, studies, commands"
        aria-expanded={all.length > 0}
        aria-controls="found"
        aria-autocomplete="list"
        {...(all.length > 0 ? { 'aria-activedescendant': optionId(at) } : {})}
        autocomplete="off"
        spellcheck={false}
        maxLength={200}
        placeholder="exit pressure at 10 km"
        value={typed.value}
        onInput={(event) => {
          typed.value = event.currentTarget.value;
        }}
        onKeyDown={onKeyDown}
      />
      <div id="found" role="listbox" aria-label="Found">
        {groupsOf(all).map(({ name, from, members }) => (
          // biome-ignore lint/a11y/useSemanticElements: groups of a list box have no element of their own
          <div key={name} role="group" aria-labelledby={`group-${from}`}>
            <p id={`group-${from}`} class="group">
              {name}
            </p>
            {members.map((found, i) => (
              <Option key={found.key} found={found} index={from + i} isMarked={from + i === at} />
            ))}
          </div>
        ))}
      </div>
      <p class="hint" role="status">
        {copied.value ?? (nothing ? 'Nothing fits these words.' : hintFor(all[at]))}
      </p>
    </dialog>
  );
}

function hintFor(found: Found | undefined): string {
  if (found === undefined)
    return 'Type plain words: a quantity and where, a sentence, a figure, a study, a command. Escape closes.';
  if (found.live !== null && found.group === 'In this study')
    return 'Enter opens it; Shift and Enter puts its verdict on the full screen.';
  if (found.live !== null)
    return 'Enter tells where the number comes from; Shift and Enter puts it on the full screen.';
  if (found.group === 'Copy a command') return 'Enter copies it, for the command line in the study’s folder.';
  if (found.group === 'Starters') return 'Enter copies the command that begins a study from it.';
  if (found.group === 'Numbers of studies beside this one') return 'Enter works it out from that study.';
  return found.group === 'Studies beside this one'
    ? 'Enter copies the command that opens it.'
    : 'Enter goes there.';
}

interface OptionProps {
  readonly found: Found;
  readonly index: number;
  readonly isMarked: boolean;
}

function Option({ found, index, isMarked }: OptionProps) {
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the field above has the keys, as in every combobox
    // biome-ignore lint/a11y/useFocusableInteractive: the focus stays in the field, which names the marked option
    <div
      id={optionId(index)}
      role="option"
      aria-selected={isMarked}
      class="option"
      onClick={(event) => choose(found, event.shiftKey)}
      onPointerMove={() => {
        marked.value = index;
      }}
    >
      <span>{found.label}</span>
      <span
        class={
          found.group.startsWith('Numbers') && /^[−-]?\d/.test(found.detail)
            ? 'detail number-found'
            : 'detail'
        }
      >
        {found.detail}
      </span>
    </div>
  );
}

/** Neighbours of one group, with the place of the first. */
function groupsOf(all: readonly Found[]) {
  const groups: { readonly name: string; readonly from: number; readonly members: Found[] }[] = [];
  all.forEach((found, from) => {
    const last = groups.at(-1);
    if (last?.name === found.group) last.members.push(found);
    else groups.push({ name: found.group, from, members: [found] });
  });
  return groups;
}

function closeOutside(event: MouseEvent): void {
  if (event.target === event.currentTarget && event.target instanceof HTMLDialogElement) event.target.close();
}
