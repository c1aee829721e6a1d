/** JSON Schema of what the OpenTimelineIO file format documents for the objects that a timeline of ours holds. */

const schemaName = (name: string) => ({ const: name });
const metadata = { type: 'object' };
const name = { type: 'string' };
const items = (...of: readonly string[]) => ({
  type: 'array',
  items: { oneOf: of.map((each) => ({ $ref: `#/$defs/${each}` })) },
});
const object = (properties: Record<string, unknown>) => ({
  type: 'object',
  properties,
  required: Object.keys(properties),
  additionalProperties: false,
});

export const otioSchema = {
  $defs: {
    time: object({
      OTIO_SCHEMA: schemaName('RationalTime.1'),
      rate: { type: 'number', exclusiveMinimum: 0 },
      value: { type: 'number', minimum: 0 },
    }),
    range: object({
      OTIO_SCHEMA: schemaName('TimeRange.1'),
      duration: { $ref: '#/$defs/time' },
      start_time: { $ref: '#/$defs/time' },
    }),
    marker: object({
      OTIO_SCHEMA: schemaName('Marker.2'),
      metadata,
      name,
      color: {
        enum: [
          'PINK',
          'RED',
          'ORANGE',
          'YELLOW',
          'GREEN',
          'CYAN',
          'BLUE',
          'PURPLE',
          'MAGENTA',
          'BLACK',
          'WHITE',
        ],
      },
      marked_range: { $ref: '#/$defs/range' },
      comment: { type: 'string' },
    }),
    media: {
      oneOf: [
        object({
          OTIO_SCHEMA: schemaName('ExternalReference.1'),
          target_url: { type: 'string', minLength: 1 },
          metadata,
          name,
          available_range: { type: 'null' },
          available_image_bounds: { type: 'null' },
        }),
        object({
          OTIO_SCHEMA: schemaName('ImageSequenceReference.1'),
          target_url_base: { type: 'string', pattern: '/$' },
          name_prefix: name,
          name_suffix: { type: 'string', pattern: '^\\.' },
          start_frame: { type: 'integer', minimum: 0 },
          frame_step: { type: 'integer', minimum: 1 },
          rate: { type: 'number', exclusiveMinimum: 0 },
          frame_zero_padding: { type: 'integer', minimum: 0 },
          missing_frame_policy: { enum: ['error', 'hold', 'black'] },
          metadata,
          name,
          available_range: { $ref: '#/$defs/range' },
          available_image_bounds: { type: 'null' },
        }),
        object({
          OTIO_SCHEMA: schemaName('MissingReference.1'),
          metadata,
          name,
          available_range: { type: 'null' },
          available_image_bounds: { type: 'null' },
        }),
      ],
    },
    clip: object({
      OTIO_SCHEMA: schemaName('Clip.2'),
      metadata,
      name,
      source_range: { $ref: '#/$defs/range' },
      effects: { type: 'array', maxItems: 0 },
      markers: items('marker'),
      enabled: { type: 'boolean' },
      media_references: object({ DEFAULT_MEDIA: { $ref: '#/$defs/media' } }),
      active_media_reference_key: { const: 'DEFAULT_MEDIA' },
    }),
    gap: object({
      OTIO_SCHEMA: schemaName('Gap.1'),
      metadata,
      name,
      source_range: { $ref: '#/$defs/range' },
      effects: { type: 'array', maxItems: 0 },
      markers: { type: 'array', maxItems: 0 },
      enabled: { type: 'boolean' },
    }),
    track: object({
      OTIO_SCHEMA: schemaName('Track.1'),
      metadata,
      name,
      source_range: { type: 'null' },
      effects: { type: 'array', maxItems: 0 },
      markers: items('marker'),
      enabled: { type: 'boolean' },
      children: items('clip', 'gap'),
      kind: { enum: ['Video', 'Audio'] },
    }),
  },
  ...object({
    OTIO_SCHEMA: schemaName('Timeline.1'),
    metadata,
    name,
    global_start_time: { type: 'null' },
    tracks: object({
      OTIO_SCHEMA: schemaName('Stack.1'),
      metadata,
      name,
      source_range: { type: 'null' },
      effects: { type: 'array', maxItems: 0 },
      markers: items('marker'),
      enabled: { type: 'boolean' },
      children: items('track'),
    }),
  }),
};
