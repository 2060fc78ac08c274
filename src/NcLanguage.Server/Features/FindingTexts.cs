using System.Collections.Concurrent;
using System.Runtime.CompilerServices;
using NcLanguage.Checks;
using NcLanguage.Server.Protocol;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Server.Features;

/// <summary>What was told last, kept as it was written: most of what is told behind a key are the same findings, with the very same messages.</summary>
sealed class FindingTexts(ReferenceLinks links)
{
    /// <summary>Several programs' worth; beyond that all are forgotten, and those still told are made anew.</summary>
    const int Most = 4 * DiagnosticPublisher.MostFindings;

    readonly ConcurrentDictionary<Key, DiagnosticText> _texts = new(new ByMessage());
    int _count;

    public DiagnosticText For(Finding finding, DiagnosticSeverity severity)
    {
        var link = links.For(finding.Id);
        var key = new Key(finding.Message, finding.Rule, severity, link is not null);
        if (_texts.TryGetValue(key, out var text))
            return text;
        if (Interlocked.Increment(ref _count) > Most)
        {
            _texts.Clear();
            _count = 0;
        }
        return _texts[key] = new DiagnosticText(ShownText.Of(finding.Message), severity, finding.Id, link, DiagnosticPublisher.Source, finding.Name);
    }

    readonly record struct Key(string Message, Rule Rule, DiagnosticSeverity Severity, bool HasLink);

    /// <summary>Goes by the message itself and not by its letters, which would have to be read through.</summary>
    sealed class ByMessage : IEqualityComparer<Key>
    {
        public bool Equals(Key x, Key y) => ReferenceEquals(x.Message, y.Message) && ReferenceEquals(x.Rule, y.Rule) && x.Severity == y.Severity && x.HasLink == y.HasLink;

        public int GetHashCode(Key key) => RuntimeHelpers.GetHashCode(key.Message);
    }
}
