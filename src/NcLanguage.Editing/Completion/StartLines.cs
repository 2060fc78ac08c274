using NcLanguage.Checks;
using NcLanguage.Control.Codes;
using NcLanguage.Control.State;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Editing;

/// <summary>Blocks that begin and end a program, and that change the tool.</summary>
static class StartLines
{
    /// <summary>The modes that a broken-off program may have left otherwise (NISTIR 6556 §3.6.1 and common practice).</summary>
    const string Modes = "G17 G40 G49 G80 G90 G94";

    /// <summary>Before everything else that is offered.</summary>
    const int First = -1;

    public static void Add(Spot spot, CompletionItems items, int rank)
    {
        var isBegun = spot.Before.HasSet(Slot.Units) && spot.Before.HasSet(Slot.Distance);
        // Of a program that is not begun at all it is the first block.
        var isNotBegun = !spot.Before.HasSet(Slot.Units) && !spot.Before.HasSet(Slot.Distance) && !spot.Before.HasSet(Slot.Motion) && spot.Before.Tool <= 0;
        items.Add(isBegun ? rank + 40 : isNotBegun ? First : rank, Start(spot));
        foreach (var tool in spot.Setup.Tools)
            if (tool.Number != spot.Before.Tool)
                items.Add(rank + 10, ToolChange(spot, tool));
        if (!spot.IsWithin)
            items.Add(isBegun ? rank + 20 : rank + 40, End(spot));
    }

    /// <summary>The number times ten of the code for the unit that the program has said, else that the setup is written in; mm without one.</summary>
    public static int UnitCode(Spot spot) =>
        10 * UnitLength.CodeOf(spot.Before.HasSet(Slot.Units) ? spot.Before.Units == LengthUnit.Inch : spot.Setup is { IsPresent: true, IsInch: true }, spot.Readings.Units);

    static CompletionEntry Start(Spot spot)
    {
        var writer = new LineWriter(spot);
        writer.Text(CodeTable.Find('G', UnitCode(spot))!.Text).Text(Modes);
        if (spot.Setup.Frame != Setup.UnknownFrame)
            writer.Text(WorkOffsetName.Format(spot.Setup.Frame));
        return writer.Entry("start block", "units, plane, distances, feed mode, work offset; compensation, length offset and cycle off");
    }

    static CompletionEntry End(Spot spot)
    {
        var writer = new LineWriter(spot);
        TakeAway(spot, writer);
        writer.Text("M30");
        return writer.Entry("end block", "coolant and spindle off, away along Z, program end", "The way home begins where the tool stands: look at what is above it.");
    }

    static CompletionEntry ToolChange(Spot spot, Tool tool)
    {
        var writer = new LineWriter(spot);
        if (spot.Before.Tool > 0)
            TakeAway(spot, writer);
        var number = tool.Number;
        writer.Text(spot.Style.Whole('T', number));
        if (spot.Readings.ToolChange == ToolChangeReading.M6)
            writer.Text(spot.Style.Whole('M', 6));
        if (!tool.Stands)
            writer.NewLine().Word('S', SpeedValues.Of(spot, tool) is [var speed, ..] ? speed.Text[1..] : null).Text(spot.Style.Whole('M', 3));
        if (spot.Readings.LengthOffset == LengthOffsetReading.G43)
        {
            writer.NewLine().Text("G90 G0 G43").Text(spot.Style.Whole('H', tool.LengthOffset ?? number));
            if (Clear(spot) is { } level)
                writer.Word('Z', spot.Style.LengthNumber(spot.Say.Upward(level)));
            // A tool behind one that had coolant has it too, or the first cut would be told.
            if ((spot.Before.Happened & Happened.CutWet) != 0)
                writer.Text(spot.Style.Whole('M', 8));
        }
        return writer.Entry($"T{number} tool change", ToolValues.InShort(tool, spot.Say),
            (tool.Stands ? "The tool works with the spindle standing" : "Spindle speed from the cutting data, where they have it") + "; Z above all that the setup lists.");
    }

    /// <summary>Switches off what is on and takes the tool home along Z.</summary>
    static void TakeAway(Spot spot, LineWriter writer)
    {
        ref readonly var state = ref spot.Before;
        if (state.Cycle != 0)
            writer.Text("G80").NewLine();
        if (state.Compensation != CompensationSide.Off)
            writer.Text("G40").NewLine();
        if (state.Coolant != CoolantState.Off)
            writer.Text(spot.Style.Whole('M', 9)).NewLine();
        if (state.Spindle != SpindleState.Off)
            writer.Text(spot.Style.Whole('M', 5)).NewLine();
        writer.Text("G91 G28").Text(spot.Style.Length('Z', 0)).NewLine();
        if (state.Distance != DistanceMode.Incremental)
            writer.Text("G90").NewLine();
    }

    /// <summary>The clearance above the stock and everything listed, in work coordinates, mm; null where the setup does not say.</summary>
    static double? Clear(Spot spot)
    {
        var setup = spot.Setup;
        if (setup.Stock is not { } stock || !setup.ObstaclesAreKnown || double.IsNaN(spot.ToFrame.Z) || (!setup.ObstaclesAreListed && setup.ClampHeight is null))
            return null;
        var top = Math.Max(stock.Max.Z, setup.ClampHeight ?? double.NegativeInfinity);
        foreach (var obstacle in setup.Obstacles)
            top = Math.Max(top, obstacle.Top);
        return top + setup.Clearance - spot.ToFrame.Z;
    }
}
