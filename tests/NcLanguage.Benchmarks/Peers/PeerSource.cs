using System.Text;

namespace NcLanguage.Benchmarks.Peers;

/// <summary>Sound C and TypeScript of a wanted number of lines of some 20 characters: small functions one after the other.</summary>
static class PeerSource
{
    public static string C(int lines, string name = "f") => Functions(lines, i => $"int {name}{i}(int a, int b)\n{{\n", type: "int ");

    public static string TypeScript(int lines, string name = "f") => Functions(lines, i => $"export function {name}{i}(a: number,\n    b: number) {{\n", type: "let ");

    static string Functions(int lines, Func<int, string> head, string type)
    {
        const int LinesOfAFunction = 9;
        var text = new StringBuilder(lines * 22);
        for (var i = 0; i < lines / LinesOfAFunction; i++)
            text.Append(head(i)).Append($"    {type}x = a * 3 + b + {i};\n    {type}y = x - 17 + a * b;\n    x = y * 2 + 12345 - a;\n    y = x + y * 7 - b + 3;\n    return x * y - {i};\n}}\n\n");
        for (var i = lines / LinesOfAFunction * LinesOfAFunction; i < lines; i++)
            text.Append("// ------ line to fill\n");
        return text.ToString();
    }
}
