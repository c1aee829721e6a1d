/** How the pages of a package look, on screen and on paper. */

import { FONT_STACK, themeCss } from '../look/themeCss.ts';
import { type EmbeddedFont, fontFace } from '../scene/svg.ts';

export function pageStyles(fonts: readonly EmbeddedFont[]): string {
  return `${fonts.map(fontFace).join('')}
:root{${themeCss('light')}}
@media (prefers-color-scheme:dark){:root{${themeCss('dark')}}}
*{box-sizing:border-box;margin:0}
body{font:400 17px/1.45 ${FONT_STACK};font-variant-numeric:tabular-nums lining-nums;color:var(--ink);background:var(--paper);padding:32px 20px 48px}
main,footer{max-width:960px;margin:0 auto}
h1{font-size:32px;line-height:1.2;font-weight:600;text-wrap:balance}
h2{font-size:22px;font-weight:600;margin:44px 0 12px;padding-bottom:6px;border-bottom:1px solid var(--rule-2)}
h3{font-size:18px;font-weight:600;margin:22px 0 6px}
h4{font-size:16px;font-weight:600;margin:18px 0 4px}
p,ul,table{margin-top:10px}
ul{padding-left:22px}
.answer{font-size:20px;color:var(--ink-2)}.answer strong{color:var(--ink);font-weight:600}
.caution{margin-top:16px;padding:10px 0 10px 14px;border-left:3px solid var(--ink)}
.wide{overflow-x:auto}
table{border-collapse:collapse;width:100%;font-size:16px}
th,td{text-align:left;vertical-align:top;padding:6px 14px 6px 0;border-bottom:1px solid var(--rule);font-weight:400}
thead th{font-weight:600;border-bottom-color:var(--rule-2)}
.n{text-align:right;white-space:nowrap}td.n{font-weight:600}
figure{margin:22px 0 0}figure svg{display:block;width:100%;height:auto}
figcaption{font-size:14px;color:var(--ink-2);margin-top:6px}
sub,sup{font-size:.7em;line-height:0}
a{color:inherit;text-underline-offset:3px}
footer{margin-top:40px;font-size:14px;color:var(--ink-2)}
@media (max-width:600px){h1{font-size:25px}.n{white-space:normal}}
@media print{:root{${themeCss('light')}}body{padding:0;font-size:11pt}h2{break-after:avoid}figure,tr{break-inside:avoid}@page{margin:18mm}}`;
}
