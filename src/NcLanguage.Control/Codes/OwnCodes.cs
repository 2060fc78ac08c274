using NcLanguage.Control.Execution;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Control.Codes;

/// <summary>What a code of a machine's own does in a block.</summary>
/// <param name="As">The codes whose effect it has.</param>
/// <param name="Words">The letters of the words that it takes, as bits.</param>
sealed record OwnCode(CodeEntry[] As, uint Words);

/// <summary>The codes that a machine has of its own, as blocks look them up.</summary>
sealed class OwnCodes
{
    readonly Dictionary<(char Letter, int Tenths), OwnCode> _codes;

    OwnCodes(MachineProfile machine) => _codes = machine.Codes.ToDictionary(
        code => (code.Letter, code.Tenths),
        code => new OwnCode(
            [.. code.As.Select(text => CodeTable.Find(text)!)],
            code.Words.Aggregate(0u, (bits, letter) => bits | BlockWords.Bit(letter))));

    /// <summary>Those of a machine; null where it has none.</summary>
    public static OwnCodes? Of(MachineProfile machine) => machine.Codes.IsEmpty ? null : new OwnCodes(machine);

    public OwnCode? Find(char letter, int tenths) => _codes.GetValueOrDefault((letter, tenths));
}
