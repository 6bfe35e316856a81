// The page: title block and answers on top, the plan, and what is said of the thing chosen.

import { render } from "preact";
import { useEffect, useLayoutEffect, useRef } from "preact/hooks";
import "./base.css";
import "./page.css";
import "./text.css";
import "./plan.css";
import "./time.css";
import "./days.css";
import "./alone.css";
import "./replay.css";
import "./design.css";
import "./weigh.css";
import "./widths.css";
import { came, clock, content, letterKeys, nothingYet, place, problems, to } from "./state";
import { load } from "./load";
import { AnswerStrip, PageOne } from "./answers";
import { Basis, SlabScreen } from "./basis";
import { DesignScreen } from "./design";
import { DesignPlan } from "./design-plan";
import { layout } from "./design-state";
import { moment } from "./format";
import { Findings, FindingScreen } from "./finding";
import { Help } from "./help";
import { JointScreen } from "./joint";
import { PanelScreen } from "./panel";
import { Plan } from "./plan";
import { Pours, PourScreen } from "./pour";
import { ReplayScreen } from "./replay";
import { ReplayRuler } from "./replay-ruler";
import { onReplay } from "./replay-state";
import { Ruler } from "./ruler";
import { Empty, Loading, WrongState } from "./states";
import { StageLine } from "./stage";
import { useWide } from "./wide";
import { Workings, WorkingScreen } from "./working";

// A screen: its word in the address, its name, the screens inside it, where it stands in the row of keys.
const SCREENS: { id: string; name: string; inside: string[]; where: "" | "desk" | "phone" }[] = [
  { id: "page-one", name: "Page one", inside: [], where: "" },
  { id: "findings", name: "Findings", inside: ["finding", "joint"], where: "" },
  { id: "pours", name: "Pour days", inside: ["pour", "panel"], where: "" },
  { id: "replay", name: "Replay", inside: [], where: "desk" },
  { id: "slab", name: "Slab", inside: [], where: "" },
  { id: "design", name: "Joints", inside: [], where: "desk" },
  { id: "workings", name: "Workings", inside: ["working"], where: "desk" },
  { id: "basis", name: "Basis", inside: [], where: "desk" },
  { id: "keys", name: "Keys and light", inside: [], where: "desk" },
  { id: "more", name: "More", inside: ["replay", "design", "workings", "working", "basis", "keys"], where: "phone" },
];

function More() {
  return (
    <>
      <h1>More</h1>
      <ul class="rows">
        {SCREENS.filter((s) => s.where === "desk").map((s) => (
          <li key={s.id}>
            <a href={to(s.id)}>
              <span>{s.name}</span>
            </a>
          </li>
        ))}
      </ul>
    </>
  );
}

function Screen() {
  const { screen, thing } = place.value;
  switch (screen) {
    case "page-one":
      return <PageOne />;
    case "findings":
      return <Findings panel={thing} />;
    case "finding":
      return <FindingScreen id={thing} />;
    case "joint":
      return <JointScreen id={thing} />;
    case "pours":
      return <Pours />;
    case "pour":
      return <PourScreen id={thing} />;
    case "panel":
      return <PanelScreen id={thing} />;
    case "replay":
      return <ReplayScreen />;
    case "slab":
      return <SlabScreen />;
    case "design":
      return <DesignScreen />;
    case "workings":
      return <Workings />;
    case "working":
      return <WorkingScreen id={thing} />;
    case "basis":
      return <Basis />;
    case "keys":
      return <Help />;
    case "more":
      return <More />;
    default:
      return (
        <>
          <h1>Not here</h1>
          <p>
            There is no screen called {screen}. <a href={to("page-one")}>Go to page one</a>
          </p>
        </>
      );
  }
}

// useFocus moves reading to the start of what was chosen, without losing the plan.
function useFocus(panel: { current: HTMLElement | null }, wide: boolean) {
  const times = came.value;
  useLayoutEffect(() => {
    if (times === 0) return;
    const head = panel.current?.querySelector<HTMLElement>("h1");
    if (!head) return;
    document.title = `${head.innerText} · ${content.value!.head.number || content.value!.head.title} · Slabwright`;
    head.tabIndex = -1;
    head.focus({ preventScroll: true });
    if (wide) panel.current!.scrollTop = 0;
    else (document.querySelector(".left") ?? panel.current!).scrollIntoView({ block: "start" });
  }, [times]);
}

function useKeys() {
  useEffect(() => {
    const key = (e: KeyboardEvent) => {
      const typing = (e.target as Element).closest(
        "input:not([type=range]):not([type=checkbox]):not([type=radio]), textarea, select",
      );
      if (e.key === "?" && letterKeys.value && !typing) location.hash = to("keys");
      if (e.key === "Escape") {
        const fold = (e.target as Element).closest("details[open]") as HTMLDetailsElement | null;
        if (fold) {
          fold.open = false;
          fold.querySelector("summary")?.focus();
          return;
        }
        const up: Record<string, string> = {
          finding: "findings",
          joint: "findings",
          pour: "pours",
          panel: "pours",
          working: "workings",
        };
        location.hash = to(up[place.value.screen] ?? "page-one");
      }
    };
    document.addEventListener("keydown", key);
    return () => document.removeEventListener("keydown", key);
  }, []);
}

function Page() {
  const c = content.value!,
    wide = useWide(),
    panel = useRef<HTMLElement>(null);
  useFocus(panel, wide);
  useKeys();
  const { screen } = place.value;
  const planFirst = !["workings", "working", "basis", "keys", "more", "page-one"].includes(screen);
  return (
    <div class={`page ${planFirst ? "" : "text-first"}${screen === "pour" || screen === "panel" ? "even" : ""}`}>
      <a
        class="skip"
        href="#said"
        onClick={(e) => {
          e.preventDefault();
          panel.current?.querySelector<HTMLElement>("h1")?.setAttribute("tabindex", "-1");
          panel.current?.querySelector<HTMLElement>("h1")?.focus();
        }}
      >
        Skip the plan
      </a>
      <div class="top">
        <header class="title-block">
          <p class="job">
            <strong>{c.head.title || c.head.slab_name}</strong>{" "}
            <span class="quiet">
              {c.head.number}
              <span class="site">{c.head.place && ` · ${c.head.place}`}</span>
            </span>
          </p>
          <p class="quiet rev">
            {moment(c.head.looked) !== undefined && `Looked at ${clock.value.on(c.head.looked)} · `}
            {c.head.revision || "DRAFT"}
          </p>
        </header>
        <Nav />
      </div>
      <StageLine />
      {screen !== "page-one" && screen !== "design" && <AnswerStrip wide={wide} />}
      <div class="sheet">
        {(planFirst || wide) && (
          <div class="left">
            <Drawn screen={screen} wide={wide} />
          </div>
        )}
        <main class="right" id="said" ref={panel} tabIndex={wide ? 0 : undefined} aria-label="What is said of the thing chosen">
          <Screen />
        </main>
      </div>
    </div>
  );
}

// Drawn is the plan that belongs to the screen, and the ruler of its hours.
function Drawn({ screen, wide }: { screen: string; wide: boolean }) {
  if (screen === "design") return layout.value && <DesignPlan />;
  return (
    <>
      <Plan />
      {onReplay.value ? <ReplayRuler /> : (wide || screen === "pour" || screen === "panel") && <Ruler />}
    </>
  );
}

function Nav() {
  const { screen } = place.value;
  return (
    <nav class="nav" aria-label="Screens">
      <ul>
        {SCREENS.map(({ id, name, inside, where }) => {
          const here = screen === id || inside.includes(screen);
          return (
            <li key={id} class={where}>
              <a href={to(id)} aria-current={here ? "page" : undefined}>
                {name}
              </a>
            </li>
          );
        })}
      </ul>
    </nav>
  );
}

function App() {
  if (problems.value && nothingYet.value) return <Empty />;
  if (problems.value) return <WrongState />;
  if (!content.value) return <Loading />;
  if (!(content.value.plan?.slab?.outline_m?.length > 0)) return <Empty />;
  return <Page />;
}

render(<App />, document.getElementById("app")!);
void load();
