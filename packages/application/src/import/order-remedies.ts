/** What to do about a field of an order that is out of its range; the field by its name in the record or the table. */
export function remedyOfOrderField(field: string): string {
  switch (field) {
    case "pieces":
      return "Write whole pieces from 1 to 1,000,000,000.";
    case "customer":
      return "Write a name of 1 to 120 characters.";
    case "kind":
      return "Write firm or forecast.";
    case "weight":
      return "Write a number from 0 to 1000; 1 is usual.";
    case "underTolerance":
    case "overTolerance":
      return "Write a share such as 5 %.";
    case "id":
      return "Write an order number of at most 64 characters.";
    default:
      return "Correct the value.";
  }
}
