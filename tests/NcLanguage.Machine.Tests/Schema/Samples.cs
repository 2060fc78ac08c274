namespace NcLanguage.Machine.Tests.Schema;

/// <summary>Files that use every member once.</summary>
static class Samples
{
    public const string Setup = """
        {
          "$schema": "setup.schema.json", "units": "mm", "frame": "G54", "machine": "shop.machine.json", "material": "aluminium",
          "stock": { "min": [0, 0, -12], "max": [140, 60, 0],
                     "hollows": [ { "name": "cored bore", "center": [100, 30], "diameter": 24 }, { "name": "slot", "min": [60, 40], "max": [80, 52], "cornerRadius": 5, "bottom": -4 } ] },
          "clearance": 2, "clampHeight": 30,
          "obstacles": [ { "name": "clamp A", "min": [20, -10, 0], "max": [45, 20, 30] },
                         { "name": "stud", "center": [60, 30], "diameter": 16, "bottom": 0, "top": 38 } ],
          "supports": [ { "name": "parallel", "min": [0, 0, -30], "max": [140, 8, -12] } ],
          "workOffsets": { "G54": [-320, -210, -400] },
          "tools": [ { "number": 4, "kind": "spot-drill", "diameter": 10, "pointAngle": 90, "fluteLength": 25, "flutes": 2, "centreCutting": true, "throughCoolant": false, "turns": true, "length": 95,
                       "holderDiameter": 40, "holderGauge": 60, "material": "HSS", "lengthOffset": 4, "radiusOffset": 4, "pitch": null } ],
          "holes": [ { "x": 20, "y": 12, "diameter": 6.8, "depth": 15, "thread": "M8" } ],
          "variables": { "#500": 3.2, "#<depth>": 1 }
        }
        """;

    public const string Cutting = """
        {
          "$schema": "cutting.schema.json", "units": "mm",
          "materials": [ { "name": "bearing bronze", "alsoCalled": ["gunmetal"], "family": "bronze" } ],
          "rows": [ { "material": ["bearing bronze"], "kind": ["drill", "reamer"], "toolMaterial": ["HSS"], "diameter": [3, 12], "speed": [20, 30],
                      "feedPerTurn": [0.05, 0.2], "feedPerTooth": [0.02, 0.1], "source": "our own trials" } ]
        }
        """;

    public const string Machine = """
        {
          "$schema": "machine.schema.json", "base": "iso-mill", "name": "the mill by the door", "units": "mm",
          "travel": { "x": [-500, 0], "y": [-400, 0], "z": [-450, 0] }, "home": [0, 0, 0], "toolChange": [0, 0, -10],
          "rapid": { "x": 20000, "y": 20000, "z": 15000 }, "acceleration": 2500, "maxFeed": 8000, "spindle": { "min": 60, "max": 8000 },
          "toolChangeSeconds": 5, "tools": 20,
          "codes": { "M13": { "does": "spindle and coolant", "as": "M3 M8" }, "G5.1": { "does": "smooths the path", "words": "QR" }, "M10": { "does": "closes the vise" } },
          "readings": {
            "dwell": "byPoint", "integers": "increments", "holePositions": "incremental", "returnLevel": "beforeMove", "rapidPath": "perAxis",
            "repeats": "K", "arcCentre": "absolute", "toolChange": "T", "units": "G70/G71", "lengthOffset": "withTool", "stopsAct": "afterMotion",
            "incrementalR": "initialLevel", "peckReturn": "rLevel", "zeroRepeats": "keepsCycle", "backBoring": "fromRToZ", "rapidsEndCycle": false,
            "programMarks": { "percent": true, "number": true, "longestBlock": 80, "lowerCase": false, "characters": "%()+-./:" }
          }
        }
        """;
}
