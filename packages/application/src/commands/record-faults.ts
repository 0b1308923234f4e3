import { type Order, type Plant, type PlantFault, orderFaults, plantFaults } from "@formweek/capacity-model";
import { type AppError, type FieldFault, appError } from "../errors.ts";

const MOST_FAULTS = 50;

/** What is wrong between a plant's records as a refusal; null when nothing is. */
export function refusalOfPlant(plant: Plant): AppError | null {
  return refusalOf("The plant's records do not hang together.", plantFaults(plant));
}

/** What is wrong with orders against their plant as a refusal; null when nothing is. */
export function refusalOfOrders(orders: readonly Order[], plant: Plant): AppError | null {
  return refusalOf("Orders do not fit the plant.", orderFaults(orders, plant));
}

function refusalOf(title: string, faults: readonly PlantFault[]): AppError | null {
  const [first] = faults;
  if (first === undefined) return null;
  const more = faults.length === 1 ? "" : ` And ${faults.length - 1} more.`;
  const remedy = "Correct the entries named below and try again.";
  return appError(
    "invalid-input",
    { title, cause: `${recordText(first)}: ${first.cause}${more}`, remedy },
    faults.slice(0, MOST_FAULTS).map(fieldFault),
  );
}

/** A fault of a record by the name people know it by, and its field. */
function fieldFault(fault: PlantFault): FieldFault {
  const { said, of, field, cause, remedy } = fault;
  const record = recordText(fault);
  return {
    path: field === "" ? record : `${record}, ${field}`,
    problem: cause,
    remedy,
    cause: said,
    record: of,
  };
}

const recordText = ({ of }: PlantFault): string => `${of.kind} ${of.name}`;
