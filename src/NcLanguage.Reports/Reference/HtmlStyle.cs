namespace NcLanguage.Reports.Reference;

/// <summary>How pages for browsers look: by day, by night and on paper.</summary>
static class HtmlStyle
{
    // A test measures that each colour of text can be read on both grounds, by day, by night and on paper.
    public const string Colours = """
        :root {
          color-scheme: light dark;
          --ground: #fdfdfb; --box: #efefe9; --text: #20221f; --faint: #54584f; --link: #0f5b66; --line: #c3c5bb;
        }
        @media (prefers-color-scheme: dark) {
          :root { --ground: #191b1a; --box: #262a28; --text: #e4e6e1; --faint: #acb2a9; --link: #84c9d3; --line: #474d48; }
        }
        @media print {
          :root { color-scheme: light; --ground: #ffffff; --box: #ffffff; --text: #000000; --faint: #333333; --link: #000000; --line: #888888; }
        }

        """;

    public const string Sheet = Colours + """
        html { background: var(--ground); color: var(--text); font: 1rem/1.5 system-ui, sans-serif; }
        body { margin: 0 auto; max-width: 48rem; padding: 1rem; overflow-wrap: break-word; }
        h1 { font-size: 1.6rem; line-height: 1.2; margin: 1rem 0 0.25rem; }
        h2 { font-size: 1.05rem; margin: 1.5rem 0 0.25rem; }
        p { margin: 0.25rem 0; }
        pre { background: var(--box); border: 1px solid var(--line); font: 0.9rem/1.4 ui-monospace, monospace; padding: 0.6rem 0.8rem; white-space: pre-wrap; }
        .rows span { display: block; padding-left: var(--hang); text-indent: calc(-1 * var(--hang)); }
        a { color: var(--link); }
        a:focus-visible { outline: 2px solid var(--link); outline-offset: 2px; }
        .title, .names span, nav, footer { color: var(--faint); }
        ul { list-style: none; margin: 0.25rem 0; padding: 0; }
        .names li { margin: 0.2rem 0; }
        .groups { columns: 14rem; }
        footer { border-top: 1px solid var(--line); margin-top: 2rem; padding-top: 0.5rem; }
        @media print {
          nav { display: none; }
          h2 { break-after: avoid; }
          pre, li { break-inside: avoid; }
        }

        """;
}
