/* page_style.c - how the page looks: on a phone, on a desk, on a wall, on paper.
 *
 * No meaning lies in a colour: there are ink, ground and a grey for rules; what must not be overlooked is
 * bold. The drawings keep their white ground in the dark, since they are black on white. */
#include "report/html.h"

#include <gantline/version.h>

static const char *const rules[] = {
    /* The contrast of each ink on its ground is over 7 to 1, of each rule over 3 to 1. */
    ":root{color-scheme:light dark;--ink:#111;--ground:#fff;--rule:#767676;--link:#0a3a8a}",
    "@media screen and (prefers-color-scheme:dark){:root{--ink:#eee;--ground:#161616;--rule:#8a8a8a;",
    "--link:#a9c8ff}}",
    "*{box-sizing:border-box}",
    "html{-webkit-text-size-adjust:100%;text-size-adjust:100%;background:var(--ground)}",
    "body{margin:0;font:1rem/1.5 sans-serif;color:var(--ink);background:var(--ground);",
    "overflow-wrap:anywhere}",
    /* Letters joined into one sign (fi) are lost to whoever searches the print, or has it read out. */
    "body{font-variant-ligatures:none}",
    "main,footer{max-width:72em;margin:0 auto;padding:0 1em}",
    "h1{font-size:1.6em;line-height:1.25;margin:.8em 0 .4em}",
    "h2{font-size:1.25em;line-height:1.3;margin:1.8em 0 .5em;border-bottom:2px solid}",
    "h3{font-size:1.05em;margin:1em 0 .4em}",
    "p,ul,dl{margin:.5em 0}",
    "ul{padding-left:1.3em}",
    "a{color:var(--link)}",
    ":focus-visible{outline:3px solid var(--link);outline-offset:2px}",

    /* Labels beside what belongs to them where there is room, else above it. */
    "dt{font-weight:bold}",
    "dd{margin:0}",
    ".pairs>div{margin:.3em 0}",
    ".notes>div{margin:.6em 0}",
    "@media (min-width:40em){.pairs>div{display:grid;grid-template-columns:11em 1fr;gap:1em}}",
    "dd.strong{font-size:1.25em;font-weight:bold;line-height:1.3;border:3px solid;padding:.3em .5em}",

    ".checked{border:1px solid var(--rule);padding:.2em .8em;margin:1em 0}",
    ".checked h2{margin:.3em 0;border:0;font-size:1.05em}",
    ".checked dl{display:flex;flex-wrap:wrap;gap:.2em 1em;margin:0}",
    ".checked dl>div{flex:1 1 5.5em;border-bottom:1px solid;min-height:3.2em}",
    ".checked dt{font-weight:normal}",

    "summary{cursor:pointer;padding:.35em 0;min-height:2em;font-weight:bold}",
    "nav ul{columns:20em;list-style:none;padding:0}",
    "nav a{display:block;padding:.3em 0;min-height:2em}",

    /* What is too wide scrolls in its own place, never the page. */
    ".scroll{position:relative;overflow-x:auto;max-width:100%;margin:.5em 0}",
    "table{border-collapse:collapse;min-width:min(100%,34em)}",
    "caption{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%);white-space:nowrap}",
    "th,td{padding:.25em .7em;text-align:left;vertical-align:top;border-bottom:1px solid var(--rule);",
    "overflow-wrap:normal}",
    "td{white-space:nowrap}",
    "td.strong{font-weight:bold}",
    "th:first-child{padding-left:0}",
    "thead th{border-bottom:2px solid;vertical-align:bottom}",
    "tbody th{font-weight:normal;max-width:30em;overflow-wrap:break-word}",
    ".group th{font-weight:bold;padding-top:.7em}",
    "tbody th.below{padding-left:1.2em}",
    ".number{text-align:right;white-space:nowrap;font-variant-numeric:tabular-nums}",
    "svg.bar{width:5.75em;height:.6em;margin-right:.5em;overflow:visible}",
    ".bar .whole{fill:none;stroke:currentColor;stroke-width:14}",
    ".bar .used{fill:currentColor}",
    ".bar .past{fill:none;stroke:currentColor;stroke-width:22}",
    "pre{margin:0;font-family:monospace,monospace;font-size:1em;line-height:1.4;tab-size:8;",
    "overflow-wrap:normal}",
    ".source{border:1px solid var(--rule);padding:.6em}",
    ".named::before{content:\"[\" attr(data-code) \"]\"}",

    ".equation{font-family:monospace,monospace;margin:.3em 0 .3em 1.5em;",
    "padding-left:1.5em;text-indent:-1.5em}",
    ".step{border-left:3px solid var(--rule);margin:.8em 0;padding:0 0 0 .8em}",
    ".step summary h3{display:inline;margin:0}",
    ".step .drawing svg{max-width:40em;margin:0}",
    ".room{border:1px solid var(--rule);margin:.6em 0}",

    /* A unit of a drawing is a pixel, and its text 16 of them: it is never shown smaller. */
    ".drawing{background:#fff;color:#000;color-scheme:light;border:1px solid var(--rule)}",
    ".drawing svg{display:block;width:100%;min-width:640px;max-width:1100px;height:auto;margin:0 auto}",
    ".choice{border:1px solid var(--rule);margin:.5em 0;padding:.2em .8em}",
    ".choice label{display:inline-flex;align-items:center;gap:.4em;min-height:2.2em;margin-right:1.2em}",
    ".choice input{width:1.5em;height:1.5em;margin:0}",
    "@media print{.choice{display:none}}",
    "@supports not selector(:has(*)){.choice{display:none}}",

    /* A bare drawing is as wide as what it holds: in a problem with room to write text stands beside it. */
    ".drawing svg.bare{width:auto;min-width:0;margin:0}",
    "@media print,(min-width:48em){.step:has(>.room) .drawing{float:left;max-width:50%;",
    "margin:0 1.5em .5em 0;border:0}.step:has(>.room) .pairs>div{grid-template-columns:10em 1fr}",
    ".step:has(>.room) ul{display:flow-root}.step>.room{clear:both}}",

    /* On a wall. */
    "@media screen and (min-width:1280px){body{font-size:clamp(1.125rem,1.45vw,2rem)}}",

    "@media print{",
    "body{font-size:10.5pt;line-height:1.35}",
    "main,footer{max-width:none;padding:0}",
    "nav,details:not(.step){display:none}",
    /* Folded away or not: on paper all steps are open. */
    ".step::details-content{content-visibility:visible;display:block}",
    ".step summary{list-style:none;break-after:avoid}.step{border:0;padding:0}.equation{break-inside:avoid}",
    ".step:has(>.room) svg.bare{zoom:.75}.step:has(>.room){break-inside:avoid}",
    ".leaf{break-before:page}",
    "h1{margin-top:0}h2,h3,caption,thead,.group{break-after:avoid}",
    "tr,table.short,tbody:has(.group),li,.checked,.pairs>div,.notes>div{break-inside:avoid}",
    "thead{display:table-header-group}",
    ".scroll{overflow:visible}",
    "table{min-width:0;max-width:100%}",
    "th,td{padding-top:.15em;padding-bottom:.15em}.source{border:0;padding:0}",
    "tbody th{overflow-wrap:anywhere}",
    ".drawing{border:0}.drawing svg{min-width:0;max-width:100%;max-height:21.5cm;break-inside:avoid}",
    ".step .drawing svg{max-width:12cm}",
    "pre{white-space:pre-wrap;overflow-wrap:anywhere;font-size:.85em}",
    "}",
};

/* Room behind figures that are shorter behind the point than others; a point takes half of a digit. */
static void figures(gtl_text *out)
{
    for (int lacking = 1; lacking <= GTL_MOST_LACKING; lacking++)
        gtl_text_add(
            out, ".digits-%d{padding-right:calc(.7em + %dch)}.point-%d{padding-right:calc(.7em + %d.5ch)}\n",
            lacking, lacking, lacking, lacking - 1);
}

/* With no rule that knows which case is chosen all of them are shown. */
static void choice(gtl_text *out, const gtl_page *page)
{
    if (page->case_count < 2) return;
    gtl_text_add(out, "@media screen{@supports selector(:has(*)){.case{display:none}\n");
    for (int i = 0; i < page->case_count; i++)
        gtl_text_add(out, "main:has(#pick-%d:checked) #case-%d{display:block}\n", i, i);
    gtl_text_add(out, "}}\n");
}

/* Margins that suit A4 and Letter; no page of a report goes without the verdict. */
static void paper(gtl_text *out, const gtl_page *page)
{
    gtl_text_add(out,
                 "@page{margin:16mm 15mm 20mm;"
                 "@bottom-left{font:9pt sans-serif;content:\"gantline %s - %s\"}"
                 "@bottom-right{font:9pt sans-serif;content:\"page \" counter(page) \" of \" "
                 "counter(pages)}}\n",
                 gtl_version(), page->foot);
}

void gtl_html_style(gtl_text *out, const gtl_page *page)
{
    for (size_t i = 0; i < sizeof rules / sizeof *rules; i++) gtl_text_add(out, "%s\n", rules[i]);
    figures(out);
    choice(out, page);
    paper(out, page);
}
