/** How the explorable page looks: as the pages of a package, with the altitude always in reach. */

import { pageStyles } from '../page/pageStyles.ts';
import type { EmbeddedFont } from '../scene/svg.ts';

export function exploreStyles(fonts: readonly EmbeddedFont[]): string {
  return `${pageStyles(fonts)}
main,footer{max-width:1240px;overflow-wrap:anywhere}
.bar{position:sticky;top:0;z-index:1;display:flex;flex-wrap:wrap;gap:6px 14px;align-items:center;margin-top:20px;padding:10px 0;background:var(--paper);border-bottom:1px solid var(--rule-2)}
.bar input{flex:1 1 200px;min-width:0;height:32px;accent-color:var(--ink)}
.bar output{min-width:9.5em;font-weight:600}
button{font:inherit;color:inherit;background:none;border:1px solid var(--rule-2);border-radius:4px;padding:3px 12px;cursor:pointer}
td button,li button{border:0;border-radius:2px;padding:2px 0;min-height:24px;text-decoration:underline;text-decoration-style:dotted;text-underline-offset:4px}
td button{font-weight:600;text-align:right}
:focus-visible{outline:2px solid var(--ink);outline-offset:2px}
.pictures{display:grid;grid-template-columns:1fr 1fr;gap:0 28px;align-items:start}
.pictures>*{min-width:0}.pictures figure{margin-top:12px}
#behind-title:focus{outline:0}
figure svg{font-variant-numeric:tabular-nums lining-nums}
.engine-1{color:var(--engine-1)}.engine-2{color:var(--engine-2)}.engine-3{color:var(--engine-3)}.engine-4{color:var(--engine-4)}
article{margin-top:16px}article h3{margin:0}
dialog{margin:auto;max-width:min(640px,calc(100vw - 32px));max-height:calc(100vh - 48px);overflow:auto;padding:20px 22px;color:var(--ink);background:var(--paper);border:1px solid var(--rule-2);border-radius:6px}
dialog::backdrop{background:rgb(0 0 0 / 45%)}
dialog h2{margin:0 0 8px}
dl{display:grid;grid-template-columns:max-content 1fr;gap:6px 14px;margin:0 0 16px}
dt{color:var(--ink-2)}dd{margin:0;overflow-wrap:anywhere}
@media (max-width:800px){.pictures{grid-template-columns:1fr}.bar output{min-width:0;flex:1}.bar input{flex-basis:100%;order:4}dl{grid-template-columns:1fr;gap:2px}dt{margin-top:6px}body{padding:20px 14px 40px}th,td{padding-right:10px}}
@media print{.bar,#play,dialog{display:none}}`;
}
