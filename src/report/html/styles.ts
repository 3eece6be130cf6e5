/**
 * How the page looks: one column of text with its contents beside it, hairlines, no colour that
 * means anything.
 */

/** Colours of text, lines and grounds; all opaque. */
export const COLOURS = {
  ink: "#1e2733",
  soft: "#5b6675",
  link: "#2a3f5e",
  line: "#d9dde3",
  strong: "#9aa3b0",
  ground: "#f4f6f8",
  mark: "#e4e9ef",
  white: "#ffffff",
} as const;

/** The typeface of the page. */
export interface HtmlFonts {
  /** Regular face as WOFF2 in base 64. */
  readonly regular: string;
  /** Semibold face as WOFF2 in base 64. */
  readonly semibold: string;
  /** Italic face as WOFF2 in base 64. */
  readonly italic: string;
}

/**
 * Writes the style sheet.
 *
 * @param fonts - the typeface
 * @returns CSS
 */
export function styleSheet(fonts: HtmlFonts): string {
  return [
    face(fonts.regular, 400, "normal"),
    face(fonts.semibold, 600, "normal"),
    face(fonts.italic, 400, "italic"),
    SCREEN,
    PAPER,
  ].join("\n");
}

function face(font: string, weight: number, style: string): string {
  const source = `url(data:font/woff2;base64,${font}) format("woff2")`;
  return `@font-face{font-family:Inter;font-weight:${weight};font-style:${style};src:${source}}`;
}

const { ink, soft, link, line, strong, ground, mark, white } = COLOURS;

const SCREEN = `
*{box-sizing:border-box}
html{color-scheme:light;background:${white};color:${ink};text-size-adjust:100%;
font:400 1rem/1.6 Inter,system-ui,sans-serif;font-variant-numeric:lining-nums;scroll-padding-top:1rem}
body{margin:0 auto;padding:2.5rem 1.25rem 4rem;max-width:48.5rem;overflow-wrap:break-word}
.patterns{position:absolute}
.skip{position:absolute;left:-99rem}
.skip:focus{left:1rem;top:1rem;padding:.5rem 1rem;background:${white}}
:focus-visible{outline:2px solid ${link};outline-offset:2px}
a{color:${link};text-underline-offset:.18em;text-decoration-thickness:1px}
h1,h2,h3{font-weight:600;line-height:1.25;text-wrap:balance;letter-spacing:-.011em}
h1{font-size:1.95rem;line-height:1.2;letter-spacing:-.018em;margin:.4rem 0 0}
h2{font-size:1.36rem;margin:3.4rem 0 .9rem}
h3{font-size:1.06rem;margin:2.2rem 0 .6rem}
p,ul,ol,dl{margin:.85rem 0}
p,li{max-width:42rem}
ul,ol{padding-left:1.4rem}
li{margin:.35rem 0;padding-left:.2rem}
li::marker{color:${soft}}
strong{font-weight:600}
code{font-family:inherit;font-size:.92em;background:${mark};border-radius:2px;padding:.08em .3em;
overflow-wrap:anywhere}
sup{font-size:.72em;line-height:0;vertical-align:.45em}
sup a{text-decoration:none;padding:0 .1em}
sup a:hover{text-decoration:underline}
.lead{font-size:1.14rem;line-height:1.55}
.small,.imprint,.foot{font-size:.84rem;line-height:1.5;color:${soft}}
.imprint{margin:0}
.fig{color:inherit;text-decoration:underline dotted ${strong};text-underline-offset:.22em}
.fig:hover,.fig:focus-visible{color:${link};text-decoration:underline solid}
nav{margin:1.8rem 0 0;padding:.9rem 0 1rem;border:solid ${line};border-width:1px 0;font-size:.9rem}
nav h2{font-size:.9rem;margin:0 0 .3rem;letter-spacing:0}
nav ol{margin:0;padding:0;list-style:none;columns:2 14rem;column-gap:2rem}
nav li{margin:0;padding:.2rem 0;line-height:1.4}
nav a{text-decoration:none}
nav a:hover{text-decoration:underline}
main>:first-child{margin-top:1.8rem}
figure{margin:1.9rem 0}
figcaption,summary{font-weight:600;font-size:.92rem;line-height:1.4}
.how{font-weight:400}
figcaption{margin-bottom:.6rem;max-width:42rem}
.scroll{overflow-x:auto}
.drawn svg{display:block;width:100%;min-width:37.5rem;height:auto}
.drawn.small svg{min-width:0;max-width:24rem}
.narrow{display:none}
.drawn .narrow svg{min-width:0;max-width:28rem}
.missing{margin:0;padding:1.1rem 1.25rem;max-width:none;border:1px dashed ${strong};color:${soft};
font-size:.92rem}
table{border-collapse:collapse;min-width:100%;font-size:.875rem;line-height:1.4}
.number,.trace .value{font-variant-numeric:lining-nums tabular-nums}
th,td{padding:.42rem .9rem .42rem 0;text-align:left;vertical-align:top;font-weight:400;
border-bottom:1px solid ${line}}
tr>:last-child{padding-right:0}
thead th,thead td{font-weight:600;font-size:.8rem;line-height:1.35;vertical-align:bottom;
border-bottom:1px solid ${ink};padding-top:0}
tbody tr:last-child>*{border-bottom-color:${strong}}
tbody th{min-width:7rem}
.number{text-align:right}
td.number{white-space:nowrap}
th.number{padding-left:.4rem}
.strong,.total>*{font-weight:600}
.total>*{border-top:1px solid ${strong}}
table .fig{text-decoration:none}
table .fig:hover,table .fig:focus-visible{text-decoration:underline}
th button{all:unset;cursor:pointer}
th button:focus-visible{outline:2px solid ${link};outline-offset:2px}
th button:hover{text-decoration:underline;text-underline-offset:.2em}
th[aria-sort] button::after{content:" \\2191"}
th[aria-sort=descending] button::after{content:" \\2193"}
summary{cursor:pointer;display:flex;align-items:baseline}
summary::-webkit-details-marker{display:none}
summary::before{content:"";flex:none;width:.42rem;height:.42rem;margin:0 .75rem .06rem .15rem;
border:solid ${soft};border-width:0 1.5px 1.5px 0;transform:rotate(-45deg)}
details[open]>summary::before{transform:translateY(-.14rem) rotate(45deg)}
.behind{margin:1rem 0 1.9rem}
.behind>summary{font-weight:400;color:${soft};width:fit-content}
.behind[open]>summary{margin-bottom:.8rem}
.behind table{font-size:.81rem}
.drawn+.behind{margin-top:-1.1rem}
.strip{margin:1.3rem 0}
.strip>p{margin:0 0 .35rem;max-width:none}
.strip,.shares{font-size:.81rem;line-height:1.4;color:${soft}}
.bar,.shares li svg{display:block;overflow:visible}
.shares ul{display:flex;flex-wrap:wrap;gap:.15rem 1.25rem;margin:.4rem 0 0;padding:0;list-style:none;
font-variant-numeric:tabular-nums}
.shares li{display:flex;align-items:center;gap:.42rem;margin:0;padding:0}
.box{margin:1.8rem 0;padding:1.1rem 1.35rem 1.2rem;background:${ground};border:1px solid ${ground}}
.box.caution{background:${white};border-color:${ink}}
.box>.title{margin:0 0 .3rem;font-weight:600}
.box>:last-child{margin-bottom:0}
.notes{font-size:.875rem;line-height:1.5}
.back{text-decoration:none;padding:0 .3em}
.traces{margin-top:3.4rem}
.printed{display:none}
.group{border-top:1px solid ${line}}
.group:last-child{border-bottom:1px solid ${line}}
.group>summary{padding:.6rem 0}
.group>:last-child{margin-bottom:1rem}
.many{font-weight:400;color:${soft};white-space:nowrap;padding-left:.4rem}
.trace{margin-left:1.3rem;border-top:1px solid ${line}}
.trace>summary{padding:.45rem 0;font-size:.875rem}
.trace .value{flex:none;min-width:8.3rem;padding-right:1rem;font-weight:600}
.trace .where{font-weight:400;color:${soft}}
.trace[open]>summary .where{color:${ink}}
.trace dl{display:grid;grid-template-columns:9.6rem 1fr;gap:.35rem 0;margin:.2rem 0 1.2rem;
font-size:.875rem;line-height:1.45}
.trace dt{color:${soft};padding-right:1rem}
.trace dd{margin:0;min-width:0}
.trace .shares{padding-top:.42rem}
.trace .scroll{margin-bottom:1.5rem}
.trace caption{text-align:left;font-weight:600;padding-bottom:.5rem}
.trace table{font-size:.81rem}
.trace td,.trace tbody th{min-width:6.5rem}
.trace td.number{min-width:0}
.trace td:nth-child(3){min-width:11.5rem}
.trace .rest th{color:${soft}}
.trace small{display:block;font-size:.76rem;color:${soft}}
.reads code{background:none;padding:0;font-size:.76rem}
:target{background:${mark};box-shadow:0 0 0 .35rem ${mark}}
section:target,h2:target,h3:target,figure:target,details:target{background:none;box-shadow:none}
.trace:target>summary{background:${mark}}
.foot{margin-top:3.5rem;padding-top:.9rem;border-top:1px solid ${line};overflow-wrap:anywhere}
@media(min-width:70rem){
body{display:grid;grid-template:auto 1fr auto/12.5rem 46rem;column-gap:3.5rem;max-width:64.5rem;
padding-top:3.5rem}
header,main,.foot{grid-column:2}
nav{grid-area:2/1;align-self:start;position:sticky;top:2rem;max-height:calc(100vh - 4rem);
overflow-y:auto;border-width:1px 0 0;margin-top:2.1rem}
nav h2{margin-bottom:.5rem}
nav li{padding:.26rem 0}
main{min-width:0}
}
@media(max-width:48rem){
.scroll{background:linear-gradient(90deg,${white} 35%,transparent) left/2.5rem 100% no-repeat local,
linear-gradient(270deg,${white} 35%,transparent) right/2.5rem 100% no-repeat local,
linear-gradient(90deg,${line},transparent) left/.75rem 100% no-repeat,
linear-gradient(270deg,${line},transparent) right/.75rem 100% no-repeat}
}
@media(max-width:36rem){
nav ol{columns:auto}
nav li{display:inline-block;margin-right:1rem;padding:.15rem 0}
.drawn .wide{display:none}
.narrow{display:block}
.cards,.cards tbody,.cards tr,.cards td,.cards tbody th{display:block}
.cards thead{display:none}
.cards tr{padding:.7rem 0 .6rem;border-bottom:1px solid ${line}}
.cards tbody tr:first-child{border-top:1px solid ${ink}}
.cards tbody tr>*{border:0;padding:0}
.cards tbody th{font-weight:600;padding-bottom:.15rem}
.cards td{display:flex;justify-content:space-between;gap:1rem;text-align:right}
.cards td::before{content:attr(data-label);color:${soft};text-align:left}
.cards td.number{white-space:normal}
}
@media(max-width:30rem){
.trace{margin-left:0}
body{padding:1.5rem 1.1rem 3rem}
h1{font-size:1.6rem}
h2{font-size:1.25rem;margin-top:2.8rem}
.box{padding:1rem 1.1rem}
.trace dl{grid-template-columns:1fr;gap:0}
.trace dd{margin-bottom:.5rem}
.trace>summary{flex-wrap:wrap}
.trace .value{min-width:60%}
.trace .where{padding-left:1.3rem;flex-basis:100%}
}`;

const PAPER = `
@page{size:A4;margin:19mm 18mm 20mm 22mm;
@bottom-right{content:counter(page) " / " counter(pages);font:7.5pt Inter,sans-serif;color:${soft}}}
@media print{
html{font-size:9.6pt;line-height:1.45;print-color-adjust:exact}
body{display:block;max-width:none;padding:0 1px 0 0}
summary::before{display:none}
.skip,.screen,.group{display:none}
.printed{display:block}
.traces h2{font-size:1.06rem}
nav,.narrow{display:none}
h2{margin:1.9rem 0 .6rem}
h1,h2,h3,figcaption,.strip>p,.box>.title{break-after:avoid}
.page{break-before:page}
p,li{orphans:2;widows:2}
figure.drawn,.strip,.box,tr{break-inside:avoid}
.box{background:none;border-color:${strong}}
thead{display:table-header-group}
th button{display:contents}
th,td{padding-top:.25rem;padding-bottom:.25rem}
thead th,thead td{padding-top:0}
figure{margin:1.2rem 0}
.box{margin:1.2rem 0;padding:.8rem 1.1rem .9rem}
p,ul,ol,dl{margin:.6rem 0}
.scroll{overflow:visible}
.drawn svg{min-width:0}
table{font-size:.86rem}
.strip,.shares{font-size:.82rem}
.small,.imprint,.foot{font-size:.86rem}
thead th,thead td{font-size:.82rem}
sup{font-size:.8em}
td,th,td.number{white-space:normal;overflow-wrap:break-word}
.behind table,.trace table{font-size:.8rem}
.trace small,.reads code{font-size:.8rem}
a,.fig{color:inherit;text-decoration:none}
p a[href^="https"],li a[href^="https"]{text-decoration:underline}
.back{display:none}
:target{background:none;box-shadow:none}
}`;
