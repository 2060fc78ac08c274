namespace NcLanguage.Checks.Rules;

/// <summary>The setup that the examples of the rules on traverses share: a plate, one clamp across its middle, a drill.</summary>
static class HopExample
{
    public const string Setup = """
        { "units": "mm", "frame": "G54",
          "stock": { "min": [0, 0, -20], "max": [80, 50, 0] },
          "clearance": 2,
          "obstacles": [ { "name": "bridge clamp", "min": [28, 10, 0], "max": [44, 60, 25] } ],
          "tools": [ { "number": 3, "kind": "drill", "diameter": 6, "pointAngle": 118, "fluteLength": 40, "flutes": 2, "length": 90, "lengthOffset": 3 } ] }
        """;

    public const string ClampHeightSetup = """
        { "units": "mm", "frame": "G54",
          "stock": { "min": [0, 0, -20], "max": [80, 50, 0] },
          "clearance": 2,
          "clampHeight": 25,
          "tools": [ { "number": 3, "kind": "drill", "diameter": 6, "pointAngle": 118, "fluteLength": 40, "flutes": 2, "length": 90, "lengthOffset": 3 } ] }
        """;
}
