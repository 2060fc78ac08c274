using NcLanguage.Reports.Reference;

namespace NcLanguage.Reports.Sheet;

/// <summary>How the sheet looks: by day, by night and on paper. The colours are those of the pages of the reference.</summary>
static class SheetStyle
{
    // A test measures that each colour of text can be read on its ground. On paper all is black on white, so that any printer does.
    public const string Css = HtmlStyle.Colours + """
        :root { --alarm: #9d1c1c; }
        @media (prefers-color-scheme: dark) { :root { --alarm: #ffb0a6; } }
        html { background: var(--ground); color: var(--text); font: 0.95rem/1.45 system-ui, sans-serif; }
        body { margin: 0 auto; max-width: 64rem; padding: 1rem; overflow-wrap: break-word; }
        h1 { font-size: 1.5rem; line-height: 1.2; margin: 0 0 0.25rem; }
        h2 { border-bottom: 1px solid var(--line); font-size: 1.1rem; margin: 1.6rem 0 0.4rem; padding-bottom: 0.1rem; }
        h3 { font-size: 0.95rem; margin: 0.4rem 0 0.1rem; }
        p { margin: 0.3rem 0; }
        /* Room for the dots: what stands beside the section is cut off. */
        ul { margin: 0.2rem 0; padding-left: 1.5rem; }
        .columns { columns: 22rem; column-gap: 1.5rem; }
        .columns li { break-inside: avoid; }
        .halves { display: grid; gap: 0 1.5rem; grid-template-columns: repeat(auto-fit, minmax(16rem, 1fr)); }
        .title { color: var(--faint); }
        .loud { font-weight: bold; }
        aside { border: 2px solid var(--text); margin: 0.8rem 0; padding: 0.3rem 0.7rem; }
        dl { display: grid; gap: 0.15rem 1.5rem; grid-template-columns: repeat(auto-fit, minmax(18rem, 1fr)); margin: 0.5rem 0; }
        dl div { display: flex; gap: 0.5rem; }
        dt { color: var(--faint); flex: 0 0 6.5rem; }
        dd { margin: 0; overflow-wrap: anywhere; }
        section { overflow-x: auto; }
        table { border-collapse: collapse; font-size: 0.85rem; font-variant-numeric: tabular-nums; margin: 0.5rem 0 0.9rem; width: 100%; }
        caption { caption-side: top; color: var(--faint); padding-bottom: 0.15rem; text-align: left; }
        th, td { border: 1px solid var(--line); padding: 0.12rem 0.35rem; text-align: left; vertical-align: top; }
        th { background: var(--box); font-weight: 600; }
        th span { color: var(--faint); display: block; font-weight: normal; }
        .n { text-align: right; }
        td.n { white-space: nowrap; }
        .alarm td { color: var(--alarm); font-weight: bold; }
        #stops td:nth-child(2) { font-family: ui-monospace, monospace; }
        #sign td { height: 2.2rem; }
        #sign thead th { width: 30%; }
        #sign thead th:first-child, #sign thead th:nth-child(3) { width: 20%; }
        #sign th[scope=row] { background: none; white-space: nowrap; }
        figure { margin: 0.5rem 0; }
        figure svg { height: auto; max-width: 100%; }
        /* On a narrow screen it is moved sideways, as tables are, rather than made too small to read. */
        @media screen { figure svg { min-width: 180mm; width: 100%; } }
        figcaption { color: var(--faint); font-size: 0.85rem; }
        @page { margin: 13mm 12mm 16mm; }
        @page { @bottom-right { content: "Page " counter(page) " of " counter(pages); font: 8pt system-ui, sans-serif; } }
        @media print {
          :root { --alarm: #000000; }
          html { font-size: 9.5pt; }
          body { max-width: none; padding: 0; }
          section { overflow: visible; }
          h1, h2, h3, caption, #table > p:has(~ figure) { break-after: avoid; }
          p:has(+ table) { break-after: avoid; }
          table + p { break-before: avoid; }
          h2 { margin-top: 1.1rem; }
          p, li, figure, aside, header, tr, .halves, #readings, .whole { break-inside: avoid; }
          thead { display: table-header-group; }
          table { font-size: 7.6pt; }
          th, td { padding: 0.6mm 1mm; }
          #holes td { line-height: 1.2; padding: 0.25mm 1mm; }
          .columns { columns: 2; font-size: 8pt; }
          .halves { grid-template-columns: 1fr 1fr; }
          dl { grid-template-columns: 1fr 1fr; }
          .alarm td { border: 2px solid #000000; }
          #sign td { height: 11mm; }
        }

        """;
}
