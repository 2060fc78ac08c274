using System.Runtime.CompilerServices;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Control.Execution;

enum BlockFate { Runs, NotRun, Skipped }

/// <summary>Where programs of a file begin and end, and which blocks run at all.</summary>
static class Programs
{
    public static BlockFate Enter(in Block block, ref ControlState state, BlockExecutor executor)
    {
        var first = block.Tokens[0];
        if (first.Kind == TokenKind.Percent)
        {
            // The first % opens the file; one after blocks closes it.
            if (state.InLeader)
                state.InLeader = false;
            else if (state.Started)
                state.Ended = true;
            return BlockFate.NotRun;
        }
        if (state.InLeader)
            return BlockFate.NotRun;
        if (state.Ended)
        {
            if (!block.BeginsProgram)
            {
                foreach (ref readonly var token in block.Tokens)
                    if (!token.IsComment && token.Kind is not (TokenKind.Skip or TokenKind.Percent) && !token.IsWord('N'))
                        state.Happened |= Happened.PastEnd;
                return BlockFate.NotRun;
            }
            BeginAnother(ref state);
        }
        if (first.Kind == TokenKind.Skip && executor.SkipBlocks)
            return BlockFate.Skipped;
        foreach (ref readonly var token in block.Tokens)
        {
            if (token.IsComment || token.IsWord('O') || token.IsWord(':'))
                continue;
            state.Started = true;
            break;
        }
        return BlockFate.Runs;
    }

    /// <summary>A further program of the file is called from elsewhere: what it starts from is not known here.</summary>
    /// <remarks>Apart from <see cref="Enter"/>, which would make room for a whole state at each block.</remarks>
    [MethodImpl(MethodImplOptions.NoInlining)]
    static void BeginAnother(ref ControlState state)
    {
        state = ControlState.Unknown;
        // Its number is not the first block of the file: a % right behind it closes the file.
        state.Started = true;
    }
}
