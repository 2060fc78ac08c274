using System.Collections.Immutable;
using System.Text;

namespace NcLanguage.Editing;

/// <summary>Puts a signature's label together and keeps where its words stand.</summary>
sealed class SignatureWriter(string head)
{
    readonly StringBuilder _label = new(head);
    readonly ImmutableArray<SignatureWord>.Builder _words = ImmutableArray.CreateBuilder<SignatureWord>();

    public void Add(string shown, string text)
    {
        var start = _label.Append(' ').Length;
        _words.Add(new SignatureWord(start, _label.Append(shown).Length, text));
    }

    public SignatureLine Line(string documentation, int active) => new(_label.ToString(), documentation, _words.ToImmutable(), active);
}
