import { beginFilm, filmAddress, filmState, stopFilm } from '../state/film.ts';

/** The climb as a film: a button, then how far it is with a way to stop it, then a place to save it from. */
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
      {film.is === 'ready' && (
        <a href={filmAddress} download={film.name}>
          Save film
        </a>
      )}
      {film.is === 'failed' && <span role="alert">{film.problem.what}</span>}
    </span>
  );
}
