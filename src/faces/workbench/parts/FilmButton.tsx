import { FILM_SHAPES } from '../../film/filmModel.ts';
import { beginFilm, filmAddress, filmChosen, filmState, filmsThere, stopFilm } from '../state/film.ts';

/** A clip as a film: a button and what it films, then how far it is with a way to stop it, then a place to save it from. */
export function FilmButton() {
  const film = filmState.value;
  if (film.is === 'working')
    return (
      <span class="film" role="status">
        <progress aria-label="The film" max={film.of} value={film.done} />
        <button type="button" onClick={() => void stopFilm()}>
          Stop film
        </button>
      </span>
    );
  return (
    <span class="film">
      <button type="button" onClick={() => void beginFilm()}>
        Film
      </button>
      <FilmChoice />
      {film.is === 'ready' && (
        <a href={filmAddress} download={film.name}>
          Save film
        </a>
      )}
      {film.is === 'failed' && <span role="alert">{film.problem.what}</span>}
    </span>
  );
}

/** What is filmed, in which shape, on which ground; folded away until it is asked for. */
function FilmChoice() {
  const { clip, size, alpha } = filmChosen.value;
  const there = filmsThere.value;
  const choose = (change: Partial<typeof filmChosen.value>): void => {
    filmChosen.value = { ...filmChosen.value, ...change };
  };
  return (
    <details class="film-choice">
      <summary aria-label={`${size}: what is filmed`}>{size}</summary>
      <div>
        <label>
          <span>Film of</span>
          <select value={clip} onChange={(event) => choose({ clip: event.currentTarget.value })}>
            {there.map(({ name, about }) => (
              <option key={name} value={name}>
                {about}
              </option>
            ))}
          </select>
        </label>
        <label>
          <span>Shape</span>
          <select
            value={size}
            onChange={(event) =>
              choose({ size: FILM_SHAPES.find((shape) => shape === event.currentTarget.value) ?? '16:9' })
            }
          >
            {FILM_SHAPES.map((shape) => (
              <option key={shape} value={shape}>
                {shape}
              </option>
            ))}
          </select>
        </label>
        <label>
          <input
            type="checkbox"
            checked={alpha}
            onChange={(event) => choose({ alpha: event.currentTarget.checked })}
          />
          <span>Transparent ground (WebM)</span>
        </label>
      </div>
    </details>
  );
}
