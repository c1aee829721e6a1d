import { useRef } from 'preact/hooks';
import type { InputSlider } from '../state/inputSliders.ts';
import { warmUp } from '../workshop/workshop.ts';
import type { FieldDraft } from './useFieldDraft.ts';

interface FieldSliderProps {
  readonly slider: InputSlider;
  readonly draft: FieldDraft;
  readonly label: string;
  /** What it shows stands elsewhere in the study, or nowhere. */ readonly isInherited: boolean;
}

/** The line below a field, with the value’s place on it: what is dragged is shown at once and written when let go. */
export function FieldSlider({ slider, draft, label, isInherited }: FieldSliderProps) {
  const isHeld = useRef(false);
  const lastPlace = useRef(0);
  const place = slider.placeOf(draft.shown) ?? lastPlace.current;
  lastPlace.current = place;
  const textAt = (at: number): string => slider.textAt(at) ?? draft.shown;
  return (
    <input
      type="range"
      class={isInherited ? 'field-slider inherited' : 'field-slider'}
      min={0}
      max={slider.last}
      step={1}
      value={place}
      aria-label={`${label}, slider`}
      aria-valuetext={draft.shown}
      onPointerDown={() => {
        isHeld.current = true;
      }}
      onPointerCancel={() => {
        isHeld.current = false;
      }}
      onFocus={warmUp}
      onInput={(event) => {
        const text = textAt(event.currentTarget.valueAsNumber);
        // Keys come one by one: they gather as they do in the field, and are worked out once.
        if (isHeld.current) draft.slideTo(text);
        else draft.stepTo(text);
      }}
      onChange={(event) => {
        if (isHeld.current) draft.commit(textAt(event.currentTarget.valueAsNumber));
        isHeld.current = false;
      }}
      onBlur={() => {
        if (draft.isChanged) draft.commit();
      }}
      onKeyDown={(event) => {
        if (event.key === 'Escape') draft.takeBack();
      }}
    />
  );
}
