using System.CommandLine;
using NcLanguage.Checks;
using NcLanguage.Checks.Cutting;
using NcLanguage.Cli.Common;
using NcLanguage.Cli.Files;
using NcLanguage.Machine.Cutting;
using NcLanguage.Machine.Loading;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Cli.Figures;

/// <summary>The options that ask the cutting data.</summary>
sealed class TableOptions
{
    readonly Option<string?> _material = new("--material") { HelpName = "NAME", Description = "Take it from the cutting data for this material, such as aluminium." };
    readonly Option<string> _edge = new("--tool-material") { HelpName = "NAME", Description = "What the tool is made of.", DefaultValueFactory = _ => "HSS" };
    readonly Option<string> _kind = ChoiceOption.Create("--kind", "The kind of tool.", ["drill", .. ToolKindName.All.Where(name => name != "drill")]);

    public TableOptions(Command command)
    {
        command.Add(_material);
        command.Add(_edge);
        command.Add(_kind);
    }

    public bool IsAsked(FigureValues values) => values.Parse.GetValue(_material) is not null;

    public CuttingRange Speed(FigureValues values, double diameter)
    {
        var (table, material, edge, kind) = Asked(values);
        return table.Speed(material, edge, kind, diameter) ?? throw Nothing("cutting speed", table, material, edge, kind, diameter, values);
    }

    /// <param name="teeth">Null where they are not told.</param>
    public FeedRange Feed(FigureValues values, double diameter, int? teeth)
    {
        var (table, material, edge, kind) = Asked(values);
        if (table.FeedPerTooth(material, edge, kind, diameter) is { } perTooth)
            return new FeedRange(perTooth, teeth ?? throw values.Missing("--flutes"), IsPerTooth: true);
        return table.FeedPerTurn(material, edge, kind, diameter) is { } perTurn
            ? new FeedRange(perTurn, 1, IsPerTooth: false)
            : throw Nothing("feed", table, material, edge, kind, diameter, values);
    }

    (CuttingTable Table, string Material, string Edge, ToolKind Kind) Asked(FigureValues values)
    {
        var table = JobResolver.Cutting(Directory.GetCurrentDirectory(), out var problems);
        foreach (var problem in problems)
            Application.Tell(problem);
        return (table, values.Parse.GetValue(_material)!, values.Parse.GetValue(_edge)!, ToolKindName.Parse(values.Parse.GetValue(_kind)!)!.Value);
    }

    static CannotRunException Nothing(string what, CuttingTable table, string material, string edge, ToolKind kind, double diameter, FigureValues values)
    {
        if (table.NameOf(material) is { } known)
            return new($"the cutting data have no {what} for {known} and a {ToolKindName.Format(kind)} of {edge}, {new LengthText(values.IsInch).Length(diameter)}");
        var names = table.MaterialNames.ToList();
        return new($"the cutting data do not know the material {material}; {NearestName.DidYouMean(material, names, $"they know {string.Join(", ", names)}")}");
    }
}
