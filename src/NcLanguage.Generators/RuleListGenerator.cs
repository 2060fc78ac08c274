using System.Collections.Immutable;
using System.Linq;
using System.Text;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace NcLanguage.Generators;

/// <summary>Lists every rule of the project at compile time, so that adding a rule touches one file and nothing is found
/// by reflection at run time.</summary>
[Generator]
public sealed class RuleListGenerator : IIncrementalGenerator
{
    const string BaseClass = "NcLanguage.Checks.Rule";

    public void Initialize(IncrementalGeneratorInitializationContext context)
    {
        var rules = context.SyntaxProvider.CreateSyntaxProvider(
            static (node, _) => node is ClassDeclarationSyntax { BaseList: not null },
            static (node, cancel) => NameOfRule((INamedTypeSymbol?)node.SemanticModel.GetDeclaredSymbol(node.Node, cancel)))
            .Where(static name => name is not null);
        context.RegisterSourceOutput(rules.Collect(), static (output, names) => output.AddSource("RuleList.g.cs", Write(names)));
    }

    static string? NameOfRule(INamedTypeSymbol? type)
    {
        if (type is null || type.IsAbstract)
            return null;
        for (var parent = type.BaseType; parent is not null; parent = parent.BaseType)
            if (parent.ToDisplayString() == BaseClass)
                return type.ToDisplayString(SymbolDisplayFormat.FullyQualifiedFormat);
        return null;
    }

    static string Write(ImmutableArray<string?> names)
    {
        var text = new StringBuilder();
        text.AppendLine("namespace NcLanguage.Checks;");
        text.AppendLine();
        text.AppendLine("public static partial class RuleList");
        text.AppendLine("{");
        text.AppendLine("    private static partial Rule[] Create() =>");
        text.AppendLine("    [");
        foreach (var name in names.Distinct().OrderBy(name => name, System.StringComparer.Ordinal))
            text.Append("        new ").Append(name).AppendLine("(),");
        text.AppendLine("    ];");
        text.AppendLine("}");
        return text.ToString();
    }
}
