using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using NcLanguage.EndToEnd.Support;

namespace NcLanguage.EndToEnd;

/// <summary>The profile that the native compiler arranges the code by: it goes stale silently, as methods get other names.</summary>
public sealed class ProfileTests
{
    const double Enough = 0.9;

    [NativeFact]
    public async Task The_native_compiler_is_given_it()
    {
        await NativeExecutable.FileAsync();
        var told = Directory.GetFiles(NativeExecutable.Build, "*.ilc.rsp", SearchOption.AllDirectories);
        Assert.Contains(Path.GetFileName(Profile), await File.ReadAllTextAsync(Assert.Single(told)), StringComparison.Ordinal);
    }

    [NativeFact]
    public async Task It_names_methods_that_are_still_there()
    {
        await NativeExecutable.FileAsync();
        var compiled = Directory.GetFiles(NativeExecutable.Build, "*.dll", SearchOption.AllDirectories)
            .Where(file => Path.GetFileName(file).StartsWith("nclanguage", StringComparison.OrdinalIgnoreCase))
            .SelectMany(file => Read(file, metadata => metadata.MethodDefinitions.Select(method => NameOf(metadata, metadata.GetMethodDefinition(method)))))
            .ToHashSet();
        var named = Read(Profile, metadata => metadata.MemberReferences.Select(member => NameOf(metadata, metadata.GetMemberReference(member)))).ToList();
        var found = named.Count(compiled.Contains);
        Assert.True(named.Count > 500, $"The profile names {named.Count} methods.");
        Assert.True(found >= Enough * named.Count,
            $"Of the {named.Count} methods in the profile only {found} are still there: make it anew as DEVELOPERS.md says.");
    }

    static string Profile => Repository.At("src", "NcLanguage.Cli", "Profile", "NcLanguage.mibc");

    static List<string> Read(string file, Func<MetadataReader, IEnumerable<string>> names)
    {
        using var image = new PEReader(File.OpenRead(file));
        return [.. names(image.GetMetadataReader())];
    }

    static string NameOf(MetadataReader metadata, MethodDefinition method) => $"{NameOf(metadata, method.GetDeclaringType())}.{metadata.GetString(method.Name)}";

    static string NameOf(MetadataReader metadata, MemberReference member) => $"{NameOf(metadata, member.Parent)}.{metadata.GetString(member.Name)}";

    static string NameOf(MetadataReader metadata, EntityHandle type)
    {
        if (type.Kind == HandleKind.TypeDefinition)
        {
            var defined = metadata.GetTypeDefinition((TypeDefinitionHandle)type);
            return defined.IsNested
                ? $"{NameOf(metadata, defined.GetDeclaringType())}+{metadata.GetString(defined.Name)}"
                : $"{metadata.GetString(defined.Namespace)}.{metadata.GetString(defined.Name)}";
        }
        var named = metadata.GetTypeReference((TypeReferenceHandle)type);
        return named.ResolutionScope.Kind == HandleKind.TypeReference
            ? $"{NameOf(metadata, named.ResolutionScope)}+{metadata.GetString(named.Name)}"
            : $"{metadata.GetString(named.Namespace)}.{metadata.GetString(named.Name)}";
    }
}
