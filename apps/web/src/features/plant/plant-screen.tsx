import type { JSX, ReactNode } from "react";
import { Link } from "wouter";
import type { Plant } from "@formweek/capacity-model";
import { Icon } from "../../components/icon.tsx";
import { exportAddress } from "../../sync/queries.ts";
import { useText } from "../../text/text.ts";
import { CalendarsSection } from "./calendars-section.tsx";
import { ChangesSection } from "./changes-section.tsx";
import { CrewsSection } from "./crews-section.tsx";
import { LinesSection } from "./lines-section.tsx";
import { MouldsSection } from "./moulds-section.tsx";
import { plantSections, type PlantSection } from "./plant-sections.ts";
import { ProductsSection } from "./products-section.tsx";
import { RatesSection } from "./rates-section.tsx";
import { SheetsSection } from "./sheets-section.tsx";

interface PlantScreenProps {
  readonly plantId: string;
  readonly plant: Plant;
  readonly section: string | undefined;
  readonly importButtons: ReactNode;
}

/** The plant's records, one part at a time. */
export function PlantScreen({ plantId, plant, section, importButtons }: PlantScreenProps): JSX.Element {
  const text = useText();
  const open = plantSections.find((known) => known === section) ?? "rates";
  return (
    <div className="page">
      <div className="page-head">
        <h1>{plant.name}</h1>
        <span className="hint">
          {text.plant.zone}: {plant.timeZone}
        </span>
        <span className="spring" />
        {importButtons}
        <a className="button" href={exportAddress(plantId, "plant.xlsx")} download>
          <Icon name="export" /> {text.plant.export}
        </a>
      </div>
      <nav className="section-menu" aria-label={text.plant.sectionMenu}>
        {plantSections.map((known) => (
          <Link key={known} href={`/plant/${known}`} aria-current={known === open ? "page" : undefined}>
            {text.plant.sections[known]}
          </Link>
        ))}
      </nav>
      <h2 className="unseen">{text.plant.sections[open]}</h2>
      <SectionContent open={open} plant={plant} plantId={plantId} />
    </div>
  );
}

interface SectionContentProps {
  readonly open: PlantSection;
  readonly plant: Plant;
  readonly plantId: string;
}

function SectionContent({ open, plant, plantId }: SectionContentProps): JSX.Element {
  switch (open) {
    case "rates":
      return <RatesSection plantId={plantId} plant={plant} />;
    case "lines":
      return <LinesSection plant={plant} />;
    case "moulds":
      return <MouldsSection plant={plant} />;
    case "sheets":
      return <SheetsSection plant={plant} />;
    case "products":
      return <ProductsSection plant={plant} />;
    case "calendars":
      return <CalendarsSection plant={plant} />;
    case "crews":
      return <CrewsSection plant={plant} />;
    case "changes":
      return <ChangesSection plant={plant} />;
  }
}
