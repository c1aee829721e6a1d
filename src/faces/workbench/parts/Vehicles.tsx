import { quantity } from '../../../answer/catalogue.ts';
import { show } from '../../../answer/display.ts';
import type { FlightAnswer, FlightNumber, VehicleAnswer } from '../../../answer/flight/model.ts';
import type { VehicleInput } from '../../../study/model.ts';
import { CAUTION_SHORT } from '../../../telling/caution.ts';
import { drawnStyles } from '../../../telling/figures/drawnEngines.ts';
import type { EngineStyle } from '../../../telling/look/engineStyles.ts';
import { flights, flightsInSight } from '../state/flights.ts';
import { capital } from '../state/inputRows.ts';
import { outdated, solved } from '../state/studyStore.ts';
import { toldParts } from '../state/toldParts.ts';
import { vehicleNumbers } from '../state/vehicleNumbers.ts';
import { AscentChart } from './AscentChart.tsx';
import { EngineMark } from './EngineMark.tsx';
import { ToldText } from './ToldText.tsx';
import { TracedNumber } from './TracedNumber.tsx';
import { VehicleInputs } from './VehicleInputs.tsx';

type Styles = Readonly<Record<string, EngineStyle>>;

/** What the engines lift: each vehicle of the study with its own engine and with the other one. */
export function Vehicles() {
  const now = solved.value;
  if (now === null) return null;
  const styles = drawnStyles(now.answer);
  // A study that gave way to a broken text is not flown any more.
  const isFlying = flights.value === null && !outdated.value;
  return (
    <div class="models vehicles">
      {now.study.vehicles.map((input) => {
        const vehicle = flightsInSight.value?.find(({ id }) => id === input.id);
        return (
          <section key={input.id}>
            <h2>{input.name}</h2>
            {isFlying && (
              <p class="hint working" role="status">
                Being flown …{vehicle !== undefined && ' Until then it stands as it was before.'}
              </p>
            )}
            {vehicle !== undefined && (
              <div class={isFlying ? 'flights-before' : undefined}>
                <Told vehicle={vehicle} input={input} styles={styles} />
              </div>
            )}
            <VehicleInputs vehicle={input} />
          </section>
        );
      })}
    </div>
  );
}

interface ToldProps {
  readonly vehicle: VehicleAnswer;
  readonly input: VehicleInput;
  readonly styles: Styles;
}

function Told({ vehicle, input, styles }: ToldProps) {
  const { words, description, own, problem, exchanged, comparison, exchangeProblem } = vehicle;
  if (own === null) {
    return (
      <>
        <p class="fault">{[words, problem?.why, problem?.mend].filter(Boolean).join(' ')}</p>
        <p>{capital(description)}.</p>
      </>
    );
  }
  const cards = vehicleNumbers(vehicle, input);
  const told = (text: string) => <ToldText parts={toldParts(text, cards)} of={vehicle.name} />;
  const notes = [...new Set([...own.notes, ...(exchanged?.notes ?? [])])];
  return (
    <>
      <p class="finding">{told(words)}</p>
      {comparison && <p class="finding">{told(comparison.words)}</p>}
      {exchangeProblem && <p class="fault">With the other engine it does not fly: {exchangeProblem.what}</p>}
      <p>{told(`${capital(description)}.`)}</p>
      <Numbers vehicle={vehicle} flights={exchanged ? [own, exchanged] : [own]} styles={styles} />
      <p class="caution">{CAUTION_SHORT}</p>
      <AscentChart vehicle={vehicle} styles={styles} />
      {comparison && <p class="hint">Held: {comparison.held}.</p>}
      {notes.map((note) => (
        <p key={note}>{note}</p>
      ))}
    </>
  );
}

const ROWS: readonly (readonly [FlightNumber, string])[] = [
  ['payload', 'Payload'],
  ['massToOrbit', 'Mass to orbit'],
  ['highestPoint', 'Highest point'],
  ['meanSpecificImpulse', 'Mean specific impulse'],
  ['halfPropellantAltitude', 'Half of propellant burnt by'],
  ['enginesMass', 'Engines of the first stage, estimated'],
  ['liftoffThrustToWeight', 'Thrust over weight at lift-off'],
  ['maxDynamicPressure', 'Greatest dynamic pressure'],
  ['maxDynamicPressureMach', 'there, Mach'],
  ['maxDynamicPressureAltitude', 'there, altitude'],
  ['idealVelocity', 'Propellant could give, in vacuum'],
  ['gravityLoss', 'lost to gravity'],
  ['backPressureLoss', 'lost to back pressure'],
  ['steeringLoss', 'lost to steering'],
  ['dragLoss', 'lost to drag'],
  ['speedGained', 'left as speed'],
  ['thrustToWeightOneOut', 'Thrust over weight, one engine out'],
  ['chanceOfSuccess', 'Chance that the engines suffice'],
];

interface NumbersProps {
  readonly vehicle: VehicleAnswer;
  readonly flights: readonly FlightAnswer[];
  readonly styles: Styles;
}

function Numbers({ vehicle, flights, styles }: NumbersProps) {
  const rows = ROWS.filter(([name]) => flights.some((flight) => flight[name] !== undefined));
  return (
    <table class="losses flights">
      <caption class="unseen">{vehicle.name}, numbers of the flight</caption>
      <thead>
        <tr>
          <td />
          {flights.map(({ engine, engineName }) => {
            const style = styles[engine];
            return (
              <th key={engine} scope="col" class={style && `text-${style.order}`}>
                {style && <EngineMark style={style} />} {engineName}
              </th>
            );
          })}
        </tr>
      </thead>
      <tbody>
        {rows.map(([name, label]) => (
          <tr key={name} title={quantity(`flight.${name}`).meaning}>
            <th scope="row">{label}</th>
            {flights.map((flight) => (
              <td key={flight.engine}>
                <FlightValue vehicle={vehicle} flight={flight} name={name} label={label} />
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

interface FlightValueProps {
  readonly vehicle: VehicleAnswer;
  readonly flight: FlightAnswer;
  readonly name: FlightNumber;
  readonly label: string;
}

function FlightValue({ vehicle, flight, name, label }: FlightValueProps) {
  const value = flight[name];
  if (value === undefined) return <>no number</>;
  const isOwn = flight.engine === vehicle.own?.engine;
  return (
    <TracedNumber
      quantity={`flight.${name}`}
      engine={vehicle.id}
      shown={show(`flight.${name}`, value, 3).text}
      condition={`with ${flight.engineName}`}
      label={`${vehicle.name} with ${flight.engineName}, ${label}`}
      expression={`${vehicle.id}.${name}${isOwn ? '' : `(engine = ${flight.engine})`}`}
    />
  );
}
