import { useId, useMemo, useState } from 'preact/hooks';
import type { VehicleInput } from '../../../study/model.ts';
import type { InputRow } from '../state/inputRows.ts';
import { slidersOf } from '../state/inputSliders.ts';
import { vehicleRows } from '../state/vehicleRows.ts';
import { Field } from './Field.tsx';
import { LabelButton } from './LabelButton.tsx';

/** Masses, limits and orbit of a vehicle; written to the study file when committed. */
export function VehicleInputs({ vehicle }: { readonly vehicle: VehicleInput }) {
  return (
    <details class="inputs">
      <summary>Its inputs</summary>
      <table>
        <caption class="unseen">Inputs of {vehicle.name}</caption>
        <tbody>
          {vehicleRows(vehicle).map((row) => (
            <Line key={row.key} row={row} vehicle={vehicle} />
          ))}
        </tbody>
      </table>
      <p class="hint">
        Written to study.yaml with Enter, on leaving a field or on letting a slider go. Stages, their engines
        and what is held in an exchange are set in study.yaml itself.
      </p>
    </details>
  );
}

function Line({ row, vehicle }: { readonly row: InputRow; readonly vehicle: VehicleInput }) {
  const [fault, setFault] = useState<string | null>(null);
  const id = useId();
  const [slider = null] = useMemo(() => slidersOf([{ owner: vehicle, row }]), [vehicle, row.text]);
  return (
    <>
      <tr>
        <th scope="row">
          <LabelButton row={row} owner={vehicle} />
        </th>
        <td>
          <Field
            row={row}
            label={`${vehicle.name}, ${row.label}`}
            slider={slider}
            editsOf={(text) => [{ path: row.path, value: text }]}
            faultId={fault === null ? null : id}
            onRefusal={setFault}
          />
        </td>
      </tr>
      {fault !== null && (
        <tr class="fault-line">
          <td colSpan={2}>
            <p class="fault" id={id} role="alert">
              {fault}
            </p>
          </td>
        </tr>
      )}
    </>
  );
}
