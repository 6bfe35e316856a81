// Keys and themes.

import { letterKeys, theme, type Theme } from "./state";

const KEYS: [string, string][] = [
  ["Tab, Shift+Tab", "go through panels, joints, findings and everything else"],
  ["Enter", "choose, open, close"],
  ["Esc", "close, or back to the list"],
  ["Arrows, + − 0", "on the plan: move, closer, farther, whole"],
  ["Arrows, Page Up, Page Down, Home, End", "on the hour: ten minutes, more, first, last"],
  ["?", "this list"],
];

const THEMES: [Theme, string][] = [
  ["day", "Day"],
  ["sun", "Sun: strong contrast, larger text and keys"],
  ["night", "Night"],
];

export function Help() {
  return (
    <>
      <h1>Keys and light</h1>
      <table class="keys">
        <caption class="unseen-word">Keys</caption>
        <thead>
          <tr>
            <th scope="col">Key</th>
            <th scope="col">Does</th>
          </tr>
        </thead>
        <tbody>
          {KEYS.map(([key, does]) => (
            <tr key={key}>
              <th scope="row">{key}</th>
              <td>{does}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <label class="tick">
        <input
          type="checkbox"
          checked={letterKeys.value}
          onChange={(e) => (letterKeys.value = (e.currentTarget as HTMLInputElement).checked)}
        />{" "}
        <span>Single keys such as ? work</span>
      </label>
      <fieldset>
        <legend>Light</legend>
        {THEMES.map(([id, name]) => (
          <label class="tick" key={id}>
            <input type="radio" name="theme" value={id} checked={theme.value === id} onChange={() => (theme.value = id)} />{" "}
            <span>{name}</span>
          </label>
        ))}
      </fieldset>
    </>
  );
}
