import { placeCampaign, takeCampaign } from "./campaign-moves.ts";
import { changeLots, giveUpTorn } from "./lot-moves.ts";
import { recreate, scatter, type RecreateState } from "./recreate.ts";
import { begin, pick, ruin, ruinWith, type RuinState } from "./ruin.ts";
import { changeTurn } from "./turn-moves.ts";

/** One step in so many changes how an order is split, where orders may be. */
const CHANGED_LOTS = 5;

/** How often a step is of a kind: one in so many, 0 for never. */
export interface StepShares {
  /** moves a campaign as a whole */
  readonly campaignOneIn: number;
  /** changes how a lot takes its turn */
  readonly turnOneIn: number;
}

/** What one step makes of the trial plan: what it takes out, and how it is put back. */
export class Rebuild {
  private readonly ruined: RuinState;
  private readonly recreated: RecreateState;
  private readonly shares: StepShares;
  /** orders that a ruin takes out, in the middle */
  private readonly meanSize: number;
  /** One step in so many moves orders to random places. */
  private readonly blindOneIn: number;

  /** Both states of the same trial plan. */
  constructor(ruined: RuinState, recreated: RecreateState, shares: StepShares) {
    const { jobs, linesAreIndependent } = ruined.problem;
    this.ruined = ruined;
    this.recreated = recreated;
    this.shares = shares;
    this.meanSize = Math.max(2, Math.min(10, Math.ceil(jobs.count / 6)));
    this.blindOneIn = linesAreIndependent ? 50 : jobs.count < 40 ? 4 : 8;
  }

  /** Changes the trial; the money that the lines' costs do not show of lots taken out together. */
  step(): number {
    const { random } = this.ruined;
    const { campaignOneIn, turnOneIn } = this.shares;
    const blind = random.below(this.blindOneIn) === 0;
    if (turnOneIn > 0 && random.below(turnOneIn) === 0) {
      changeTurn(this.ruined);
      if (random.below(2) === 0) return 0;
    }
    if (campaignOneIn > 0 && random.below(campaignOneIn) === 0) return this.moveCampaign();
    const { jobs, lots: allLots } = this.ruined.problem;
    const splits = allLots.count > jobs.count && random.below(CHANGED_LOTS) === 0;
    if (splits) ruinWith(this.ruined, this.meanSize, changeLots);
    else if (blind) pick(this.ruined);
    else ruin(this.ruined, this.meanSize);
    const { lots } = this.ruined.ruined;
    const money = this.forget(lots);
    if (blind) scatter(this.recreated, lots);
    else recreate(this.recreated, lots);
    giveUpTorn(this.ruined);
    return money;
  }

  /** Lots put back one by one would have to pay the campaign's change with the first of them. */
  private moveCampaign(): number {
    begin(this.ruined.ruined);
    const campaign = takeCampaign(this.ruined);
    const money = this.forget(campaign.lots);
    if (campaign.lots.length > 0) placeCampaign(this.recreated, campaign);
    giveUpTorn(this.ruined);
    return money;
  }

  /** Has the line model know nothing more of lots that were taken out. */
  private forget(lots: readonly number[]): number {
    const { model, lineOf, ruined } = this.ruined;
    for (const lot of lots) model.ready[lot] = 0;
    const money = model.lateness.takeOut(lots, lineOf);
    for (let line = 0; line < ruined.from.length; line++)
      if (ruined.from[line]! >= 0) model.refresh(line, ruined.from[line]!);
    return money;
  }
}
