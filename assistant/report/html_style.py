"""How the HTML report looks: on a screen, light and dark, and printed."""

STYLE = """
:root { color-scheme: light dark; }
body { font: 16px/1.45 system-ui, sans-serif; max-width: 52rem; margin: 2rem auto; padding: 0 1rem; }
h1 { font-size: 1.6rem; line-height: 1.2; border-top: 3px solid; padding-top: .8rem; margin-top: 3rem; }
h1:first-of-type { border: 0; margin-top: 0; }
h2 { font-size: 1.2rem; margin: 2rem 0 .4rem; }
h3 { font-size: 1rem; margin: 1.2rem 0 .2rem; }
p { margin: .4rem 0; }
.strong { font-weight: 600; }
.small, small { font-size: .82rem; opacity: .8; }
.faint { font-size: .78rem; opacity: .65; }
.sign { display: flex; gap: 2rem; margin-top: 4rem; break-inside: avoid; }
.sign p { flex: 1; border-top: 1px solid; padding-top: .2rem; font-size: .82rem; }
.sign p:first-child { flex: 2; }
.notice { border: 1px solid; border-left-width: 6px; padding: .5rem .8rem; margin: 1rem 0; }
table { border-collapse: collapse; width: 100%; table-layout: fixed; font-variant-numeric: tabular-nums; }
th, td { text-align: start; vertical-align: top; padding: .3rem .5rem .3rem 0;
  border-bottom: 1px solid #8888; overflow-wrap: anywhere; }
small { display: block; }
dl { display: grid; gap: .2rem 1rem; margin: .4rem 0; }
dt { font-weight: 600; }
dd { margin: 0; overflow-wrap: anywhere; }
ul.done, ul.open { list-style: none; padding-left: 1.4rem; text-indent: -1.4rem; }
img { max-width: 100%; }
footer { margin-top: 3rem; border-top: 1px solid; padding-top: .5rem; font-variant-numeric: tabular-nums; }
@media print {
  h1 { break-before: page; }
  h1:first-of-type { break-before: auto; }
  h2, h3 { break-after: avoid; }
  tr, figure { break-inside: avoid; }
  thead { display: table-header-group; }
  footer { position: fixed; bottom: 0; }
}
"""
