/** The form of a study as JSON Schema (draft 2020-12), made from the one table that the reader follows. */

import { coolingFields } from './coolingForm.ts';
import { courseForms } from './courseWords.ts';
import { type CycleKind, cycleForms, cycleMeaning } from './cycleForm.ts';
import {
  chamberFields,
  chemistryWords,
  disagreeKeys,
  ENGINE_ID,
  type Field,
  type Fields,
  frozenFromFields,
  ingredientFields,
  lossesField,
  nozzleForms,
  nozzleMeaning,
  PLAIN_ID,
  propellantForms,
  propellantMeaning,
  STUDY_FORMAT,
  sizeForms,
  sizeMeaning,
} from './form.ts';

import { PACKAGE_SHAPES } from './packageForm.ts';
import { publishedFields, solveForField } from './publishedForm.ts';
import { mapPoints, stepsField, sweepPoints } from './sweepForm.ts';
import { heldField, payloadField, vehicleForms, vehicleMeaning } from './vehicleForm.ts';

export type JsonSchema = { readonly [key: string]: unknown };

/** A number with its unit as text, or a bare number where the quantity has no unit. */
const scalar = { type: ['string', 'number'] } as const;
const text = { type: 'string' } as const;

function fieldSchema(field: Field): JsonSchema {
  switch (field.is) {
    case 'quantity': {
      const fallback = field.byDefault === undefined ? {} : { default: field.byDefault };
      const description = `${field.meaning} Range: ${field.range.words}.`;
      return { ...scalar, description, examples: [field.example], ...fallback };
    }
    case 'choice':
      return {
        enum: field.options,
        description: field.meaning,
        ...(field.byDefault === undefined ? {} : { default: field.byDefault }),
      };
    case 'ambient':
      return {
        ...scalar,
        description: field.meaning,
        examples: [field.example, 'sea level', '5 km', '0.5 bar'],
      };
    case 'ingredients':
      return {
        anyOf: [text, { type: 'object', additionalProperties: scalar }],
        description: field.meaning,
        examples: [field.example],
      };
    case 'engine':
    case 'text':
      return { ...text, description: field.meaning };
  }
}

function objectOf(fields: Fields, description: string, extra: JsonSchema = {}): JsonSchema {
  const properties = Object.fromEntries(
    Object.entries(fields).map(([key, field]) => [key, fieldSchema(field)] as const),
  );
  return {
    type: 'object',
    description,
    additionalProperties: false,
    properties: { ...extra, ...properties },
  };
}

function formsOf(
  forms: Readonly<Record<string, Fields>>,
  meaning: Readonly<Record<string, string>>,
): JsonSchema[] {
  return Object.entries(forms).map(([form, fields]) => objectOf(fields, meaning[form] ?? ''));
}

/** With `like:` any section may hold only what differs, so no key of a section is required here; the reader asks. */
function engineSchema(): JsonSchema {
  const burnt = propellantForms.burnt;
  const propellants = [
    objectOf({ ...burnt, oxidizer: burnt.oxidiser }, propellantMeaning.burnt),
    ...formsOf(
      { mixed: propellantForms.mixed, heated: propellantForms.heated, perfect: propellantForms.perfect },
      propellantMeaning,
    ),
  ];
  const nozzles = Object.entries(nozzleForms).map(([kind, fields]) =>
    objectOf(fields, nozzleMeaning[kind as keyof typeof nozzleForms], { kind: { const: kind } }),
  );
  return {
    type: 'object',
    additionalProperties: false,
    properties: {
      name: text,
      like: {
        ...text,
        description: 'Id of the engine whose inputs this one shares; only the differences follow.',
      },
      propellants: { anyOf: propellants },
      chemistry: {
        anyOf: [
          { enum: chemistryWords },
          {
            type: 'object',
            additionalProperties: false,
            required: ['frozenFrom'],
            properties: { frozenFrom: objectOf(frozenFromFields, 'Held from this place on.') },
          },
        ],
        default: 'shifting',
      },
      chamber: objectOf(chamberFields, 'The chamber.'),
      nozzle: { anyOf: nozzles },
      size: { anyOf: formsOf(sizeForms, sizeMeaning) },
      losses: fieldSchema(lossesField),
      cooling: {
        anyOf: [{ const: 'none' }, objectOf(coolingFields, 'How the walls are kept from melting.')],
      },
      cycle: {
        anyOf: [
          { const: 'none' },
          ...Object.entries(cycleForms).map(([kind, fields]) =>
            objectOf(fields, cycleMeaning[kind as CycleKind], { kind: { const: kind } }),
          ),
        ],
      },
      published: publishedSchema(),
    },
  };
}

/** Any name of the catalogue may stand for a plain one, so the name of the quantity is left to the reader. */
function publishedSchema(): JsonSchema {
  const { quantity, ...rest } = publishedFields;
  const row = objectOf(rest, 'One published figure.', {
    quantity: { ...text, description: quantity.meaning, examples: quantity.options },
  });
  const rows = { type: 'array', minItems: 1, items: { ...row, required: ['quantity', 'value', 'source'] } };
  return {
    description:
      'Figures that somebody published of this engine; an engine that is like it does not inherit them.',
    anyOf: [
      rows,
      {
        type: 'object',
        additionalProperties: false,
        required: ['rows'],
        properties: { solveFor: fieldSchema(solveForField), rows },
      },
    ],
  };
}

/** With `like:` any section may hold only what differs, so no key is required here; the reader asks. */
function vehicleSchema(): JsonSchema {
  const sections = Object.entries(vehicleForms).map(([section, fields]) => [
    section,
    objectOf(fields, vehicleMeaning[section as keyof typeof vehicleForms]),
  ]);
  return {
    type: 'object',
    additionalProperties: false,
    properties: {
      name: text,
      like: {
        ...text,
        description: 'Id of the vehicle whose inputs this one shares; only the differences follow.',
      },
      ...Object.fromEntries(sections),
      payload: fieldSchema(payloadField),
      held: fieldSchema(heldField),
    },
  };
}

const exact = (properties: JsonSchema, required: readonly string[]): JsonSchema => ({
  type: 'object',
  additionalProperties: false,
  required,
  properties,
});

const idSchema = { type: 'string', pattern: PLAIN_ID.source } as const;
const flag = { type: 'boolean' } as const;
const idList = { type: 'array', items: text } as const;

function factsSchema(): JsonSchema {
  const value = exact({ value: scalar, source: text }, ['value', 'source']);
  const values = { type: 'array', minItems: 2, maxItems: 2, items: value };
  const disagree = exact({ values, chosen: { enum: [1, 2] }, because: text }, disagreeKeys);
  const fact = {
    id: idSchema,
    say: text,
    value: scalar,
    at: text,
    sources: { ...idList, minItems: 1 },
    disagree,
  };
  return {
    type: 'array',
    description: 'Reported, not computed: history, dates, records; each with its source.',
    items: exact(fact, ['id', 'say', 'sources']),
  };
}

function analogiesSchema(): JsonSchema {
  const stands = exact({ this: text, for: text, relation: text }, ['this', 'for']);
  const goes = { ...text, examples: courseForms };
  const course = exact({ of: text, over: text, from: scalar, to: scalar, goes }, ['of', 'over', 'goes']);
  const leg = exact({ say: text, main: { ...flag, default: false }, holds: text, as: course }, ['say']);
  const breaks = { anyOf: [text, exact({ say: text, when: text }, ['say'])] };
  const some = (items: JsonSchema): JsonSchema => ({ type: 'array', minItems: 1, items });
  const analogy = {
    id: idSchema,
    say: text,
    said: { ...flag, default: true },
    stands: some(stands),
    legs: some(leg),
    holdsFor: text,
    breaksWhere: some(breaks),
    sources: idList,
  };
  return {
    type: 'array',
    description: 'Likenesses from daily life: what stands for what, and what of it is tested.',
    items: exact(analogy, ['id', 'say', 'stands', 'legs', 'holdsFor', 'breaksWhere']),
  };
}

function packageSchema(): JsonSchema {
  const shape = { type: 'string', enum: [...PACKAGE_SHAPES] };
  const shapes = { anyOf: [shape, { type: 'array', minItems: 1, items: shape }] };
  return {
    type: 'object',
    description: 'What is asked of the package.',
    additionalProperties: false,
    properties: { shapes, clips: { type: 'array', items: text }, clipShapes: shapes },
  };
}

const sweptSchema = {
  over: {
    ...text,
    description:
      'What moves: altitude, ambientPressure, throttle, time in a flight, an input as it stands below an engine, or its path in the study.',
    examples: ['nozzle.areaRatio', 'chamber.pressure', 'engines.bell.propellants.ratio'],
  },
  from: { ...scalar, description: 'Where it begins. Absent: a range worth looking over.' },
  to: { ...scalar, description: 'Where it ends.' },
  steps: fieldSchema(stepsField),
} as const;

function sweepSchema(): JsonSchema {
  const of = { ...text, description: 'An expression, as in a test: bell.specificImpulse(vacuum).' };
  const engines = {
    description: 'The input moves on these engines alone. Absent: where the study states it.',
    anyOf: [text, { type: 'array', items: text }],
  };
  const points = ({ least, most }: { readonly least: number; readonly most: number }): JsonSchema => ({
    type: ['integer', 'string'],
    minimum: least,
    maximum: most,
  });
  const common = { id: { type: 'string', pattern: PLAIN_ID.source }, title: text, engines };
  const side = { type: 'object', additionalProperties: false, required: ['over'], properties: sweptSchema };
  return {
    sweeps: {
      type: 'array',
      description: 'Curves of expressions while one input moves.',
      items: {
        type: 'object',
        additionalProperties: false,
        required: ['id', 'of', 'over'],
        properties: {
          ...common,
          of: { anyOf: [of, { type: 'array', minItems: 1, maxItems: 8, items: of }] },
          ...sweptSchema,
          points: points(sweepPoints),
        },
      },
    },
    maps: {
      type: 'array',
      description: 'One expression while two inputs move.',
      items: {
        type: 'object',
        additionalProperties: false,
        required: ['id', 'of', 'across', 'up'],
        properties: { ...common, of, across: side, up: side, points: points(mapPoints) },
      },
    },
    needs: {
      type: 'array',
      description: 'What an input would have to be for a comparison to hold.',
      items: {
        type: 'object',
        additionalProperties: false,
        required: ['id', 'so', 'over'],
        properties: {
          ...common,
          so: { ...text, description: 'The comparison, as in a test: bell.thrust(pad) >= plug.thrust(pad).' },
          ...sweptSchema,
        },
      },
    },
  };
}

function measuredSchema(): JsonSchema {
  return {
    type: 'array',
    description: 'Measured points in CSV files beside the study, to set beside what is computed.',
    items: {
      type: 'object',
      additionalProperties: false,
      required: ['id', 'file', 'of', 'source'],
      properties: {
        id: { type: 'string', pattern: PLAIN_ID.source },
        title: text,
        file: {
          ...text,
          description: 'Name of a CSV file in the folder of the study.',
          examples: ['stand-run.csv'],
        },
        of: { ...text, description: 'The engine or the vehicle that was measured.' },
        source: { ...text, description: 'Id of a source of the study.' },
        at: {
          ...scalar,
          description: 'Surroundings of all points, where their place is none.',
          examples: ['vacuum', '0 km', '0.97 bar'],
        },
      },
    },
  };
}

export function studyJsonSchema(): JsonSchema {
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: 'Plumeline study',
    description:
      'One question about rocket engines, the engines that answer it, and the sentences to check. For explanation and comparison, not for building or firing hardware.',
    type: 'object',
    additionalProperties: false,
    required: ['plumeline', 'question', 'engines'],
    properties: {
      plumeline: {
        type: ['integer', 'string'],
        description: `Version of the file form; ${STUDY_FORMAT} now.`,
        examples: [STUDY_FORMAT],
      },
      question: text,
      engines: {
        type: 'object',
        minProperties: 1,
        propertyNames: { pattern: ENGINE_ID.source },
        additionalProperties: engineSchema(),
      },
      vehicles: {
        type: 'object',
        propertyNames: { pattern: ENGINE_ID.source },
        additionalProperties: vehicleSchema(),
      },
      compare: {
        type: 'object',
        additionalProperties: false,
        required: ['base', 'other'],
        properties: { base: text, other: text },
      },
      altitudes: { type: 'array', items: scalar },
      ambients: { type: 'array', items: scalar },
      ingredients: {
        type: 'object',
        propertyNames: { pattern: PLAIN_ID.source },
        additionalProperties: {
          ...objectOf(ingredientFields, 'An ingredient described here.'),
          required: ['formula', 'enthalpy', 'temperature'],
        },
      },
      sentences: {
        type: 'array',
        items: {
          type: 'object',
          additionalProperties: false,
          required: ['id', 'say'],
          properties: {
            id: { type: 'string', pattern: PLAIN_ID.source },
            say: text,
            said: { type: 'boolean', default: true },
            holds: text,
            sources: { type: 'array', items: text },
          },
        },
      },
      facts: factsSchema(),
      analogies: analogiesSchema(),
      ...sweepSchema(),
      measured: measuredSchema(),
      package: packageSchema(),
      sources: {
        type: 'object',
        propertyNames: { pattern: PLAIN_ID.source },
        additionalProperties: {
          type: 'object',
          additionalProperties: false,
          required: ['title'],
          properties: { title: text, author: text, year: scalar, where: text },
        },
      },
    },
  };
}
