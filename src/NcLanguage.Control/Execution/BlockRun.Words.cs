using NcLanguage.Control.Codes;

namespace NcLanguage.Control.Execution;

// Words that belong to a call, and those that nothing in the block has taken.
ref partial struct BlockRun
{
    /// <summary>P and L of a call, and of its return, are not those of a cycle that is on.</summary>
    readonly void TakeCallWords()
    {
        if (_words.Find(ModalGroup.Subprogram) is null)
            return;
        foreach (var letter in "PLQ")
            _words.Use(letter);
    }

    readonly void FlagUnusedWords()
    {
        var unused = _words.Unused;
        if (unused == 0)
            return;
        for (var letter = 'A'; letter <= 'Z'; letter++)
            if ((unused & BlockWords.Bit(letter)) != 0)
                AddFault(FaultKind.WordWithoutEffect, _words.TokenOf(letter), letter, _words[letter]);
    }
}
