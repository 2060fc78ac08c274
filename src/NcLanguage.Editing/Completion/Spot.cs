using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Drawing;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing;

/// <summary>The cursor's block with all that what is offered there hangs on. The block is run once, with what the line now says.</summary>
sealed class Spot
{
    const int BlocksLookedBack = 500;

    readonly ProgramAnalysis _analysis;

    public Spot(ProgramAnalysis analysis, int line, CursorPlace place, bool takesSnippets)
    {
        _analysis = analysis;
        Line = line;
        Place = place;
        TakesSnippets = takesSnippets;
        Step = analysis.Main.StepAt(line);
        Style = WritingStyle.Above(analysis, line, After.Units);
        ToFrame = Offsets.ToFrame(After, Setup);
    }

    public ProgramAnalysis Analysis => _analysis;

    public int Line { get; }

    public CursorPlace Place { get; }

    /// <summary>Whether the editor has places to fill in.</summary>
    public bool TakesSnippets { get; }

    public Step Step { get; }

    public ref readonly ControlState Before => ref Step.Before;

    public ref readonly ControlState After => ref Step.After;

    public WritingStyle Style { get; }

    /// <summary>What to add to work coordinates to stand in the setup's frame, mm; NaN where not known.</summary>
    public Point3 ToFrame { get; }

    public Setup Setup => _analysis.Setup;

    public MachineProfile Machine => _analysis.Machine;

    public Readings Readings => _analysis.Machine.Readings;

    public LengthText Say => new(After.Units);

    /// <summary>The cycle in force behind the block, 0 for none or one not known.</summary>
    public int Cycle => Math.Max(After.Cycle, 0);

    /// <summary>Whether a loop, a condition or a subroutine is open here, as far as the last blocks tell.</summary>
    public bool IsWithin
    {
        get
        {
            var open = 0;
            for (var line = Line - 1; line >= Math.Max(0, Line - BlocksLookedBack); line--)
            {
                var block = _analysis.Main.BlockAt(line);
                foreach (ref readonly var token in block.Tokens)
                    open += token.Kind != TokenKind.Statement ? 0 : token.Statement switch
                    {
                        StatementKind.Do or StatementKind.Sub or StatementKind.Repeat => 1,
                        StatementKind.If or StatementKind.While when block.IndexOf('O') >= 0 => 1,
                        StatementKind.End or StatementKind.EndSub or StatementKind.EndRepeat or StatementKind.EndIf or StatementKind.EndWhile => -1,
                        _ => 0,
                    };
                if (open > 0)
                    return true;
            }
            return false;
        }
    }

    public char DepthLetter => StepFacts.DepthLetter(After);

    /// <summary>The tool that cuts from this block on: one the block names, else the one in the spindle, else the one chosen for the next change.</summary>
    public Tool? Tool => Setup.FindTool(ToolNumber);

    /// <summary>Its number; 0 for none, −1 where not known.</summary>
    public int ToolNumber => Step.Words.Has('T') || After.Tool <= 0 && After.SelectedTool > 0 ? After.SelectedTool : After.Tool;

    /// <summary>The holes of the drawing that the tool fits and has not drilled yet, nearest first.</summary>
    public IReadOnlyList<WantedHole> HolesLeft => _holesLeft ??= WantedHoles.Left(this);

    IReadOnlyList<WantedHole>? _holesLeft;

    /// <summary>What mills leave of the stock about holes.</summary>
    public MilledLevels Levels => _levels ??= new MilledLevels(_analysis.Main);

    MilledLevels? _levels;

    /// <summary>Whether nothing stands before the cursor but a skip mark, the block's number and comments.</summary>
    public bool IsAtBlockStart
    {
        get
        {
            foreach (ref readonly var token in _analysis.Main.BlockAt(Line).Tokens)
                if (token.Start < Place.Start && !token.IsComment && token.Kind != TokenKind.Skip && !token.IsWord('N'))
                    return false;
            return true;
        }
    }

    /// <summary>Whether nothing follows the cursor but a comment.</summary>
    public bool IsAtBlockEnd
    {
        get
        {
            foreach (ref readonly var token in _analysis.Main.BlockAt(Line).Tokens)
                if (token.Start >= Place.End && !token.IsComment)
                    return false;
            return true;
        }
    }

    /// <summary>Whether places of the program are plain work coordinates in the XY plane, known in the setup's frame.</summary>
    public bool IsPlain => After.Plane == WorkPlane.XY && After.ProgramFrame is null && ToFrame.IsKnown;

    /// <summary>Whether axis words of holes are distances; null where it is not known.</summary>
    public bool? HolesAreDistances =>
        Readings.HolePositions == HolePositionReading.Incremental ? true
        : After.Distance switch { DistanceMode.Absolute => false, DistanceMode.Incremental => true, _ => null };
}
