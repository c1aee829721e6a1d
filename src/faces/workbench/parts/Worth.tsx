import { Fragment } from 'preact';
import type { VehicleWorth, WorthRow, WorthTable } from '../../../answer/worth/index.ts';
import {
  EXCHANGE_HEAD,
  exchangeRows,
  rowWords,
  sideWords,
  worthWords,
} from '../../../answer/worth/worthWords.ts';
import { CAUTION_SHORT } from '../../../telling/caution.ts';
import { drawnStyles } from '../../../telling/figures/drawnEngines.ts';
import { exchangeSaid } from '../state/exchangeSaid.ts';
import { inputOfNeed, needSaid } from '../state/needSaid.ts';
import { engineInputs, ownerName } from '../state/pair.ts';
import { solved } from '../state/studyStore.ts';
import type { SaidInstead } from '../state/view.ts';
import { type Job, needsJob, worthJob } from '../state/worthTrial.ts';
import { EngineMark } from './EngineMark.tsx';
import { SweepChart } from './SweepChart.tsx';
import { TracedNumber } from './TracedNumber.tsx';

const nameOf = (id: string): string => ownerName(id) ?? id;

/** Whether the second engine of the pair is worth it, and what the study’s needs would take; each worked out on request. */
export function Worth() {
  const study = solved.value?.study;
  if (study === undefined) return null;
  return (
    <div class="models vehicles">
      {study.engines.length > 1 && <IsItWorthIt />}
      {study.needs.length > 0 && <Needs />}
    </div>
  );
}

function IsItWorthIt() {
  const found = worthJob.found.value;
  return (
    <section>
      <h2>Is it worth it?</h2>
      <p>
        What the second engine of the pair gains and what it costs, drawn together over all that is not known.
      </p>
      <OnRequest job={worthJob} />
      {found !== null && (
        <>
          {worthWords(found.table, nameOf, found.vehicles).map((words) => (
            <p key={words} class="finding">
              {words}
            </p>
          ))}
          <p class="caution">{CAUTION_SHORT}</p>
          <GainAndPrice table={found.table} />
          <p class="hint">In brackets: {found.table.drawn}</p>
          {found.vehicles.map((vehicle) => (
            <Exchange key={vehicle.vehicle} vehicle={vehicle} />
          ))}
        </>
      )}
    </section>
  );
}

/** The button that starts it, how far it has come, and a way to stop. */
function OnRequest<Found>({ job }: { readonly job: Job<Found> }) {
  const { progress, problem, found } = job;
  const so = progress.value;
  return (
    <>
      {so === null && found.value === null && (
        <p class="actions">
          <button type="button" class="main-button" onClick={job.start}>
            Work it out
          </button>
        </p>
      )}
      <p class="sweep-progress" role="status">
        {so !== null && (
          <>
            {so.most === null ? 'Working it out … ' : `${so.done} of about ${so.most} points `}
            <button type="button" class="plain-button" onClick={job.stop}>
              Stop
            </button>
          </>
        )}
      </p>
      {problem.value !== null && (
        <p class="fault">
          {problem.value.what} {problem.value.mend}
        </p>
      )}
    </>
  );
}

const GROUPS = [
  ['gain', 'Gain'],
  ['price', 'Price'],
] as const;

/** The bound stands beside the gains alone: it has no price. */
function GainAndPrice({ table }: { readonly table: WorthTable }) {
  const { base, other, bound } = table;
  const styles = solved.value === null ? {} : drawnStyles(solved.value.answer);
  return (
    <>
      {GROUPS.map(([group, caption]) => {
        const rows = table.rows.filter((row) => row.group === group);
        if (rows.length === 0) return null;
        const columns = [base, other, ...(bound === null || group === 'price' ? [] : [bound])];
        return (
          <table key={group} class="losses worth">
            <caption>{caption}</caption>
            <thead>
              <tr>
                {columns.map((id) => {
                  const style = styles[id];
                  return (
                    <th key={id} scope="col" class={style && `text-${style.order}`}>
                      {style && <EngineMark style={style} />} {nameOf(id)}
                    </th>
                  );
                })}
              </tr>
            </thead>
            <tbody>
              {rows.map((row) => (
                <Fragment key={rowWords(row)}>
                  <tr>
                    <th scope="row" colSpan={columns.length}>
                      {rowWords(row)}
                    </th>
                  </tr>
                  <tr>
                    {[row.base, row.other, row.bound].slice(0, columns.length).map((side, i) => (
                      <td key={columns[i]} title={side?.why ?? undefined}>
                        {side !== null && <Side row={row} of={columns[i]} words={sideWords(row, side)} />}
                      </td>
                    ))}
                  </tr>
                </Fragment>
              ))}
            </tbody>
          </table>
        );
      })}
    </>
  );
}

interface SideProps {
  readonly row: WorthRow;
  /** Id of the engine. */ readonly of: string | undefined;
  readonly words: string;
}

const PLACES: Readonly<Record<string, string>> = { 'at the pad': '(pad)', 'in vacuum': '(vacuum)', '': '' };

/** The value, and its band below it. */
function Side({ row, of, words }: SideProps) {
  const band = words.indexOf(' (');
  const at = band < 0 ? words.length : band;
  const place = PLACES[row.where];
  const isNumber = /\d/.test(words) && of !== undefined && place !== undefined;
  if (!isNumber) return <>{words}</>;
  return (
    <>
      <TracedNumber
        quantity={row.quantity}
        engine={of}
        shown={words.slice(0, at)}
        condition={row.where}
        label={`${nameOf(of)}, ${row.label}`}
        expression={`${of}.${row.quantity}${place}`}
      />
      {band >= 0 && <span class="band"> {words.slice(at + 1)}</span>}
    </>
  );
}

function Exchange({ vehicle }: { readonly vehicle: VehicleWorth }) {
  const [, ...heads] = EXCHANGE_HEAD;
  const input = solved.value?.study.vehicles.find(({ id }) => id === vehicle.vehicle);
  return (
    <table class="losses flights">
      <caption>What a little more is worth to {vehicle.name}</caption>
      <thead>
        <tr>
          <td />
          {heads.map((head) => (
            <th key={head} scope="col">
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {exchangeRows(vehicle).map(([label, payload, dryMass], i) => {
          const rate = vehicle.exchange.rates[i];
          const instead = input && rate && exchangeSaid(input, rate);
          return (
            <tr key={label}>
              <th scope="row">{label}</th>
              <td>
                <Rate
                  vehicle={vehicle}
                  quantity="exchange.payload"
                  of={label}
                  shown={payload}
                  instead={instead}
                />
              </td>
              <td>
                <Rate vehicle={vehicle} quantity="exchange.dryMass" of={label} shown={dryMass} />
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

interface RateProps {
  readonly vehicle: VehicleWorth;
  readonly quantity: 'exchange.payload' | 'exchange.dryMass';
  readonly of: string;
  readonly shown: string;
  readonly instead?: SaidInstead | undefined;
}

function Rate({ vehicle, quantity, of, shown, instead }: RateProps) {
  if (shown === '') return null;
  return (
    <TracedNumber
      quantity={quantity}
      engine={vehicle.vehicle}
      shown={shown}
      condition={of}
      label={`${vehicle.name}, ${of}`}
      expression={null}
      instead={instead}
    />
  );
}

function Needs() {
  const needs = solved.value?.study.needs ?? [];
  const found = needsJob.found.value;
  return (
    <section>
      <h2>What it would take</h2>
      {found === null && (
        <ul>
          {needs.map((need) => (
            <li key={need.id}>{needSaid(need, engineInputs.value, inputOfNeed(need, engineInputs.value))}</li>
          ))}
        </ul>
      )}
      <OnRequest job={needsJob} />
      {found?.map(({ id, title, words, sweep }) => (
        <div key={id}>
          {title !== null && <h3>{title}</h3>}
          {words.map((line) => (
            <p key={line} class="finding">
              {line}
            </p>
          ))}
          <SweepChart found={sweep} />
          {sweep.held.short !== '' && <p class="hint">{sweep.held.short}</p>}
        </div>
      ))}
    </section>
  );
}
