#pragma once

#include <groat/paper/html_style.hpp>

#include <groat/base/linkage.hpp>
#include <groat/paper/html_text.hpp>

#include <fmt/format.h>

namespace groat {

namespace html_detail {

/// `soft` on white is 8 : 1. Figures are lining and all as wide, so that columns stand.
inline constexpr std::string_view soft = "#4c505a"; ///< no variable reaches the margins of paper
inline constexpr std::string_view style = R"(
*{box-sizing:border-box}
html{color-scheme:light;-webkit-text-size-adjust:100%;text-size-adjust:100%}
body{margin:0 auto;max-width:50rem;padding:2.5rem 1.5rem 3.5rem;color:var(--ink);background:#fff;
font:1rem/1.5 "Iowan Old Style","Palatino Linotype",Palatino,P052,"URW Palladio L","Noto Serif","DejaVu Serif Condensed",serif;
font-variant-numeric:lining-nums tabular-nums}
header{display:flex;flex-wrap:wrap;align-items:center;gap:.75rem 1.25rem;padding-bottom:1.1rem;border-bottom:3px double var(--mark)}
header img{display:block;width:auto;height:auto;max-width:10rem;max-height:5rem}
header div{flex:1 1 14rem}
header p{margin:0;color:var(--soft);overflow-wrap:anywhere}
header p:first-child{color:var(--mark);font-size:1.6rem;line-height:1.2;letter-spacing:.015em}
header p:first-child+p{margin-top:.25rem}
h1{margin:1.8rem 0 1.1rem;font-size:1.9rem;font-weight:normal;line-height:1.2;overflow-wrap:anywhere}
h2{margin:0 0 .6rem;font-size:1.15rem;font-weight:bold;line-height:1.3;color:var(--mark);overflow-wrap:anywhere}
section{margin:2rem 0 0}
h1+section{margin-top:0}
section.more{margin-top:1rem}
section>p{margin:.4rem 0;max-width:42rem;overflow-wrap:anywhere}
dl{display:grid;grid-template-columns:minmax(0,1fr);margin:0}
dl>div{display:grid;grid-template-columns:minmax(8rem,13rem) minmax(0,1fr);gap:0 1rem;padding:.2rem 0}
dt{color:var(--soft)}
dd{margin:0;overflow-wrap:anywhere}
dl.pairs{grid-template-columns:repeat(2,minmax(0,1fr));gap:0 2.5rem}
dl.pairs>div{grid-template-columns:minmax(0,1fr) auto;border-bottom:1px solid var(--line)}
dl.pairs dd{text-align:right}
dl.head{grid-template-columns:repeat(auto-fill,minmax(11rem,1fr));gap:.9rem 2rem}
dl.head>div{display:block;padding:0}
dl.head dt{font-size:.875rem}
.wide{overflow-x:auto;background:linear-gradient(to right,#fff 1.5rem,transparent) 0 0/3rem 100% local no-repeat,
linear-gradient(to left,#fff 1.5rem,transparent) 100% 0/3rem 100% local no-repeat,
linear-gradient(to right,#0003,transparent) 0 0/.6rem 100% scroll no-repeat,
linear-gradient(to left,#0003,transparent) 100% 0/.6rem 100% scroll no-repeat #fff}
.wide:focus-visible{outline:2px solid var(--mark);outline-offset:3px}
table{width:100%;border-collapse:collapse}
th,td{padding:.35rem 0 .35rem 1rem;text-align:right;vertical-align:top;font-weight:normal}
th:first-child,td:first-child{padding-left:0}
td{white-space:nowrap}
.w{min-width:7rem;text-align:left;white-space:normal;overflow-wrap:break-word}
thead th,thead td{border-bottom:1px solid var(--mark);color:var(--soft);font-size:.875em;line-height:1.3;vertical-align:bottom}
tbody tr+tr>*{border-top:1px solid var(--line)}
tbody tr:last-child:not([class])>*{border-bottom:1px solid var(--line)}
.bar{width:24%;min-width:5rem}
.bar svg{display:block;width:100%;height:.75rem;margin-top:.4rem;fill:var(--mark)}
tbody tr.subtotal>*{border-top:0}
tbody tr.total>*{border-top:1px solid var(--ink);font-weight:bold}
tbody tr.last>*{border-top:3px double var(--ink);padding-top:.45rem;font-size:1.125em}
tbody tr.last+tr>*{border-top:0}
.sum{text-align:right}
.note,figcaption{margin:.5rem 0 0;color:var(--soft);font-size:.9375rem}
figure{margin:0}
.label h1,.label h1+section{max-width:34rem;margin:0;border:2px solid var(--ink)}
.label h1{padding:.8rem 1.1rem .3rem;border-bottom:0;border-radius:.3rem .3rem 0 0;font-size:1.4rem}
.label h1+section{padding:.3rem 1.1rem .8rem;border-top:0;border-radius:0 0 .3rem .3rem}
.label dl>div{grid-template-columns:minmax(5rem,7rem) minmax(0,1fr)}
.chart{display:block;width:100%;min-width:25rem;max-width:38rem;height:auto;font-size:13px}
.chart.low{min-width:19rem;max-width:29rem}
.chart text{fill:var(--ink);stroke:#fff;stroke-width:3px;stroke-linejoin:round;paint-order:stroke}
.chart .soft{fill:var(--soft)}
.chart .corner{fill:var(--mark);font-style:italic}
.chart path{fill:none;stroke:var(--ink);stroke-width:1.2}
.chart .grid{stroke:var(--line);stroke-width:.8}
.chart .mean{stroke-dasharray:5 4}
.chart .way{stroke:var(--mark);stroke-width:2}
.chart .way1{stroke-dasharray:7 4}
.chart .way2{stroke-dasharray:2 3}
.chart .way3{stroke-dasharray:9 3 2 3}
.chart .points *{fill:var(--mark);stroke:var(--mark);stroke-width:1.6}
.chart .points .hollow{fill:#fff}
@media (max-width:36rem){body{padding:1.25rem .875rem 2rem}header p:first-child{font-size:1.35rem}
header img{max-height:4rem}h1{margin:1.3rem 0 .9rem;font-size:1.5rem}
dl>div,dl.pairs,dl.head{grid-template-columns:minmax(0,1fr)}dl.head{gap:.5rem}dl>div{padding:.3rem 0}
dl.pairs>div,dl.head>div{display:grid;grid-template-columns:minmax(0,1fr) auto;gap:0 1rem}dl.head dt{font-size:1rem}
th,td{padding-left:.6rem}.w{min-width:6rem}}
@media (max-width:26rem){table{font-size:.875rem}th,td{padding-left:.45rem}.w{min-width:5rem}}
@media print{html{font-size:10pt}body{max-width:none;padding:0;line-height:1.35}
dl.head{grid-template-columns:repeat(auto-fill,minmax(8.4rem,1fr));gap:.6rem 1.2rem}
section{margin-top:1rem}section.more{margin-top:.7rem}section.words p{margin:.25rem 0;font-size:.9375rem;max-width:none}h1{margin:1.1rem 0 .8rem}h2{margin-bottom:.4rem}th,td{padding-top:.2rem;padding-bottom:.2rem}
.wide{overflow:visible;background:none}table{font-size:var(--fit,1em)}thead{display:table-header-group}
.bar svg,.chart{print-color-adjust:exact;-webkit-print-color-adjust:exact}
.chart{min-width:0;max-width:13cm}.chart.low{max-width:9.5cm}tr,figure,dl>div,section.short,header,section>p{break-inside:avoid}
h1,h2,header{break-after:avoid}tr.total,tr.subtotal,.note,figcaption,section.more{break-before:avoid}p{orphans:3;widows:3}}
)";

} // namespace html_detail

GROAT_INLINE std::string style_sheet(Look const& look, std::string_view foot) {
    using html_detail::soft;
    std::string text = fmt::format("\n:root{{--ink:{};--mark:{};--soft:{};--line:#cfc9bd}}",
                                   hex(look.ink), hex(look.mark), soft);
    text += html_detail::style;
    text += fmt::format("@page{{margin:14mm 17mm 17mm;@bottom-left{{content:\"{1}\";color:{0};"
                        "font:9pt serif}}\n@bottom-right{{content:counter(page) \" / \" "
                        "counter(pages);color:{0};font:9pt serif}}}}\n",
                        soft, html_detail::escaped_in_style(foot));
    return text;
}

} // namespace groat
