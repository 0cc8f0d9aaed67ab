/** How the report looks: black on white, a humanist face where the system has one, rules in place of fills. */
export const STYLE = `:root { color-scheme: light; }
* { box-sizing: border-box; }
body {
  margin: 0 auto; max-width: 60rem; padding: 2rem 1.25rem 4rem; background: #fff; color: #1a1a1a;
  font: 1rem/1.55 Seravek, "Gill Sans Nova", Ubuntu, Calibri, Carlito, Optima, Candara, "Noto Sans", "DejaVu Sans", sans-serif;
  font-variant-numeric: lining-nums tabular-nums; hyphens: manual;
}
h1, h2, h3 { line-height: 1.2; font-weight: 600; text-wrap: balance; overflow-wrap: anywhere; }
h1 { font-size: 1.9rem; margin: 0 0 .4rem; }
h2 { font-size: 1.35rem; margin: 3rem 0 .75rem; padding-top: .6rem; border-top: 1px solid #1a1a1a; }
h3 { font-size: 1.05rem; margin: 2rem 0 .5rem; }
p, li { max-width: 42rem; overflow-wrap: anywhere; }
p { margin: 0 0 .8rem; }
ul { margin: 0 0 1rem; padding-left: 1.2rem; }
a { color: inherit; text-underline-offset: .15em; text-decoration-thickness: 1px; }
nav ul { list-style: none; padding: 0; margin: 1rem 0 0; columns: 16rem; font-size: .95rem; }
nav li { break-inside: avoid; }
.wide { overflow-x: auto; margin: 0 0 1.25rem; }
.wide:focus-visible { outline: 2px solid #1a1a1a; outline-offset: 2px; }
table { border-collapse: collapse; font-size: .9rem; line-height: 1.35; }
caption { text-align: left; padding: 0 0 .35rem; color: #444; }
th, td { text-align: left; vertical-align: baseline; padding: .22rem .9rem .22rem 0; }
th:last-child, td:last-child { padding-right: 0; }
thead th { font-weight: 600; border-bottom: 1px solid #1a1a1a; vertical-align: bottom; }
tbody th { font-weight: 400; }
td i { white-space: nowrap; }
tbody tr + tr > * { border-top: 1px solid #ddd; }
.number { text-align: right; white-space: nowrap; }
.number + :not(.number) { padding-left: .9rem; }
figure { margin: 0 0 1.5rem; }
figure .wide { margin-bottom: .3rem; }
svg { display: block; font-family: inherit; }
figcaption { max-width: 42rem; font-size: .9rem; color: #444; }
@media (max-width: 45rem) {
  th:first-child { position: sticky; left: 0; background: #fff; }
}
@page { size: A4; margin: 18mm 16mm; }
@media print {
  :root { font-size: 9.5pt; }
  body { max-width: none; padding: 0; }
  p, li, figcaption { max-width: 44rem; }
  nav { display: none; }
  .wide { overflow: visible; }
  table { font-size: 8pt; }
  thead { display: table-header-group; }
  th, td { padding-right: .6rem; }
  tr, figure, li { break-inside: avoid; }
  h2, h3, caption { break-after: avoid; }
  p, li { orphans: 3; widows: 3; }
  svg { max-width: 85%; height: auto; }
}
`;
