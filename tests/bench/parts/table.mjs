/**
 * @typedef {object} Row
 * @property {string} what
 * @property {string} ours
 * @property {string} barest
 * @property {number | null} ratio ours to the barest, as the target has it
 * @property {number | null} target the highest ratio (or, with `measure`, value) that meets it; null where there is none
 * @property {number} [measure] what is held against the target where that is no ratio
 * @property {string} note
 */

/** Whether a row meets its target. @param {Row} row */
function verdict({ ratio, target, measure }) {
  if (target === null) return 'no target';
  return (measure ?? ratio) <= target ? 'met' : 'NOT MET';
}

/** One row as lines of text. @param {Row} row */
export function rowText(row) {
  const ratio = row.ratio === null ? '' : `   ratio ${row.ratio.toFixed(2)}`;
  const target = row.target === null ? '' : `   target at most ${row.target}`;
  return [
    row.what,
    `    ours ${row.ours}   barest ${row.barest}${ratio}${target}   ${verdict(row)}`,
    `    ${row.note}`,
  ].join('\n');
}

/** All rows as a table of Markdown. @param {readonly Row[]} rows */
export function table(rows) {
  const cells = rows.map((row) => [
    row.what,
    row.ours,
    row.barest,
    row.ratio === null ? '' : row.ratio.toFixed(2),
    row.target === null ? '' : String(row.target),
    verdict(row),
  ]);
  const head = ['what', 'ours', 'barest', 'ratio', 'target', ''];
  const widths = head.map((title, i) => Math.max(title.length, ...cells.map((row) => row[i].length)));
  const line = (row) => `| ${row.map((cell, i) => cell.padEnd(widths[i])).join(' | ')} |`;
  return [line(head), `|${widths.map((w) => '-'.repeat(w + 2)).join('|')}|`, ...cells.map(line)].join('\n');
}
