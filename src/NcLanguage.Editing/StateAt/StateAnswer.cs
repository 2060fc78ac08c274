using System.Collections.Immutable;

namespace NcLanguage.Editing;

/// <summary>A place, mm; null where a coordinate is not known.</summary>
public sealed record PlaceAnswer(double? X, double? Y, double? Z);

/// <summary>One part of the modal state.</summary>
/// <param name="Name">distance, units, plane, workOffset, compensation, motion, cycle, returnLevel, rLevel, bottom, dwell, peck, tool,
/// selectedTool, lengthOffset, spindle, speed, feedMode, feed, coolant.</param>
/// <param name="Code">The code in force, such as G99; null for a value or where not known.</param>
/// <param name="Value">Lengths in mm, feed in mm/min (mm per turn under G95, 1/min under G93), dwell in seconds, speed in 1/min, tools
/// and H as their number; null for a code or where not known.</param>
/// <param name="Text">The same in a setter's words, in the units of the program; null where not known.</param>
/// <param name="SetLine">The line (0-based) whose block set it; null where the program did not.</param>
public sealed record ModeAnswer(string Name, string? Code, double? Value, string? Text, int? SetLine);

/// <summary>The state of the control behind the block on a line.</summary>
/// <param name="Line">The line, from 0.</param>
/// <param name="Runs">False where the block does not run: the program has ended above it, it is skipped, or the run does not come to it.</param>
/// <param name="Times">How many times it runs; null for a line without a block. The state is that of the first time.</param>
/// <param name="Position">Where the tool's tip stands in the work coordinates in force.</param>
/// <param name="MachinePosition">Where the spindle's gauge point stands in machine coordinates.</param>
/// <param name="Modes">Parts of the state, in a fixed order; those of a cycle only while one is in force.</param>
/// <remarks>
/// JSON of the request <c>nclanguage/stateAt</c> (params: <c>{"textDocument": {"uri": "…"}, "position": {"line": 11, "character": 0}}</c>;
/// the answer is null for a line outside the text). Lines count from 0, as everywhere in the protocol:
/// <code>
/// {"line": 11, "runs": true, "times": 1,
///  "position": {"x": 20, "y": 12, "z": 2}, "machinePosition": {"x": -300, "y": null, "z": null},
///  "modes": [{"name": "distance", "code": "G90", "value": null, "text": "G90", "setLine": 0},
///            {"name": "feed", "code": null, "value": 120, "text": "F 120 mm/min", "setLine": 8}, …]}
/// </code>
/// </remarks>
public sealed record StateAnswer(int Line, bool Runs, int? Times, PlaceAnswer Position, PlaceAnswer MachinePosition, ImmutableArray<ModeAnswer> Modes);
