/**
 * Edits of a study's text. An edit is a small change of the text itself: everything around it, comments, order,
 * spaces and line ends, stays byte for byte. After each edit the text is read again, and an edit that did anything
 * else than asked, or that brought a new problem into the study, is refused.
 */
import { ProblemError } from '../numerics/problem.ts';
import { editList, type ListEdit, listAfter } from './listEdit.ts';
import type { StudyProblem } from './model.ts';
import { type ReadOptions, readStudy } from './read.ts';
import { quote } from './report.ts';
import { editText, parseAsText, type StudyEdit } from './textEdit.ts';

export { type ListEdit, placeInList } from './listEdit.ts';
export type { StudyEdit } from './textEdit.ts';

/** One value set or deleted, or one entry of a list added or taken out. */
export type StudyChange = StudyEdit | ListEdit;

/** What the edit should make of the study, by the library's own tree. */
function wantedTree(text: string, edit: StudyChange): unknown {
  const document = parseAsText(text);
  if ('list' in edit) {
    const tree = (document.toJS() ?? {}) as Readonly<Record<string, unknown>>;
    const items = Array.isArray(tree[edit.list]) ? (tree[edit.list] as readonly unknown[]) : [];
    const wanted = listAfter(items, edit);
    const { [edit.list]: _gone, ...others } = tree;
    return wanted.length === 0 ? others : { ...tree, [edit.list]: wanted };
  }
  if (edit.value === null) {
    if (document.hasIn(edit.path)) document.deleteIn(edit.path);
  } else document.setIn(edit.path, String(edit.value).trim());
  return document.toJS();
}

const keyOf = (problem: StudyProblem): string => JSON.stringify([problem.code, problem.path, problem.what]);

/**
 * The text after `edits`, comments and order kept. An engine that gets its inputs by `like:` gets keys of its own.
 *
 * @throws ProblemError when the text is not a study of the current form, when an edit leads nowhere, or when the
 * edits would bring a problem into the study that was not there before. The text given stays as it is.
 */
export function editStudy(text: string, edits: readonly StudyChange[], options: ReadOptions = {}): string {
  const before = readStudy(text, options);
  const old = before.ok ? [] : before.problems;
  const closed = old.find((problem) => problem.path === '' || problem.path === 'plumeline');
  if (closed !== undefined) throw new ProblemError(closed);
  let edited = text;
  for (const edit of edits) {
    const next = 'list' in edit ? editList(edited, edit) : editText(edited, edit);
    const got = parseAsText(next);
    const wanted = wantedTree(edited, edit);
    if (got.errors.length > 0 || JSON.stringify(got.toJS()) !== JSON.stringify(wanted)) {
      const where = 'list' in edit ? edit.list : edit.path.join('.');
      throw new ProblemError({
        code: 'edit-not-possible',
        what: `${quote(where)} cannot be changed without touching what stands around it.`,
        mend: 'Change it in the file itself.',
        where,
      });
    }
    edited = next;
  }
  const after = readStudy(edited, options);
  if (!after.ok) {
    const known = new Set(old.map(keyOf));
    const fresh = after.problems.find((problem) => !known.has(keyOf(problem)));
    if (fresh !== undefined) throw new ProblemError(fresh);
  }
  return edited;
}

/** A new study from a starter's text, comments and all, with the question put in. */
export function newStudyText(starter: string, question: string | null = null): string {
  return editStudy(starter, question === null ? [] : [{ path: ['question'], value: question }]);
}
