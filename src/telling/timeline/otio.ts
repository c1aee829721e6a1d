/**
 * OpenTimelineIO JSON, as its reference library reads it: Timeline.1, Stack.1, Track.1, Clip.2, Gap.1, Marker.2,
 * ExternalReference.1, ImageSequenceReference.1, MissingReference.1, TimeRange.1, RationalTime.1.
 */

import type { Media } from '../handover/mediaSlots.ts';

/** Frames a second of the timeline: a tenth of a second is three whole frames. */
export const RATE = 30;

/** Digits of the names of numbered pictures: `00000.png`. */
export const FRAME_DIGITS = 5;

type Json = Readonly<Record<string, unknown>>;

export const MARKER_COLOURS = ['GREEN', 'YELLOW', 'RED', 'ORANGE', 'CYAN', 'WHITE'] as const;
export type MarkerColour = (typeof MARKER_COLOURS)[number];

export function rationalTime(seconds: number): Json {
  return { OTIO_SCHEMA: 'RationalTime.1', rate: RATE, value: Math.round(seconds * RATE) };
}

export function timeRange(start: number, seconds: number): Json {
  return {
    OTIO_SCHEMA: 'TimeRange.1',
    duration: rationalTime(seconds),
    start_time: rationalTime(start),
  };
}

export interface MarkerParts {
  readonly name: string;
  readonly comment: string;
  readonly colour: MarkerColour;
  /** [s] from the beginning of its clip */ readonly start: number;
  readonly seconds: number;
  readonly metadata: Json;
}

export function marker({ name, comment, colour, start, seconds, metadata }: MarkerParts): Json {
  return {
    OTIO_SCHEMA: 'Marker.2',
    metadata: { plumeline: metadata },
    name,
    color: colour,
    marked_range: timeRange(start, seconds),
    comment,
  };
}

export interface ClipParts {
  readonly name: string;
  /** [s] */ readonly seconds: number;
  /** Relative to the timeline's file; null: still to be made. */ readonly media: Media | null;
  readonly markers: readonly Json[];
  readonly metadata: Json;
}

export function clip({ name, seconds, media, markers, metadata }: ClipParts): Json {
  return {
    OTIO_SCHEMA: 'Clip.2',
    metadata: { plumeline: metadata },
    name,
    source_range: timeRange(0, seconds),
    effects: [],
    markers,
    enabled: true,
    media_references: {
      DEFAULT_MEDIA: {
        ...reference(media),
        metadata: {},
        name: media?.file ?? '',
        available_image_bounds: null,
      },
    },
    active_media_reference_key: 'DEFAULT_MEDIA',
  };
}

/** Nothing for a while. */
export const gap = (seconds: number): Json => ({
  OTIO_SCHEMA: 'Gap.1',
  metadata: {},
  name: '',
  source_range: timeRange(0, seconds),
  effects: [],
  markers: [],
  enabled: true,
});

function reference(media: Media | null): Json {
  if (media === null) return { OTIO_SCHEMA: 'MissingReference.1', available_range: null };
  const { file, frames } = media;
  if (frames === null) return { OTIO_SCHEMA: 'ExternalReference.1', target_url: file, available_range: null };
  return {
    OTIO_SCHEMA: 'ImageSequenceReference.1',
    target_url_base: `${file}/`,
    name_prefix: '',
    name_suffix: '.png',
    start_frame: 0,
    frame_step: 1,
    rate: RATE,
    frame_zero_padding: FRAME_DIGITS,
    missing_frame_policy: 'error',
    available_range: timeRange(0, frames / RATE),
  };
}

export function track(name: string, kind: 'Video' | 'Audio', children: readonly Json[]): Json {
  return {
    OTIO_SCHEMA: 'Track.1',
    metadata: {},
    name,
    source_range: null,
    effects: [],
    markers: [],
    enabled: true,
    children,
    kind,
  };
}

export function timeline(name: string, metadata: Json, tracks: readonly Json[]): Json {
  return {
    OTIO_SCHEMA: 'Timeline.1',
    metadata: { plumeline: metadata },
    name,
    global_start_time: null,
    tracks: {
      OTIO_SCHEMA: 'Stack.1',
      metadata: {},
      name: 'tracks',
      source_range: null,
      effects: [],
      markers: [],
      enabled: true,
      children: tracks,
    },
  };
}
