using System.Reflection;
using System.Reflection.Emit;

namespace NcLanguage.Benchmarks.Profile;

/// <summary>Writes counts as the native compiler reads them (`--mibc`): an assembly whose methods are never run, but name each counted method and put down its numbers.</summary>
static class ProfileFile
{
    /// <summary>Says that offset, kind, count and target of an edge all follow as they are.</summary>
    const int AllGiven = 15;

    /// <returns>How many methods it tells of.</returns>
    public static int Write(CountedMethods methods, string path)
    {
        var name = Path.GetFileNameWithoutExtension(path);
        var assembly = new PersistedAssemblyBuilder(new AssemblyName(name), typeof(object).Assembly);
        var module = assembly.DefineDynamicModule(name);
        var (groups, told) = (new List<(string Name, MethodInfo Method)>(), 0);
        foreach (var group in methods.ByAssembly)
        {
            var method = Define(module, $"Assemblies_{group.Key};", il =>
            {
                foreach (var (counted, counts) in group)
                {
                    il.Emit(OpCodes.Ldtoken, counted is ConstructorInfo constructor ? module.GetMethodMetadataToken(constructor) : module.GetMethodMetadataToken((MethodInfo)counted));
                    Write(il, counts);
                    il.Emit(OpCodes.Pop);
                    told++;
                }
            });
            groups.Add((group.Key, method));
        }
        Define(module, "AssemblyDictionary", il =>
        {
            foreach (var (assemblies, method) in groups)
            {
                il.Emit(OpCodes.Ldstr, assemblies + ";");
                il.Emit(OpCodes.Ldtoken, method);
                il.Emit(OpCodes.Pop);
            }
        });
        Define(module, "MibcConfig", il =>
        {
            il.Emit(OpCodes.Ldstr, "FormatVersion");
            il.Emit(OpCodes.Ldstr, "1.0");
            il.Emit(OpCodes.Pop);
            il.Emit(OpCodes.Pop);
        });
        module.CreateGlobalFunctions();
        var written = path + ".new";
        assembly.Save(written);
        File.Move(written, path, overwrite: true);
        return told;
    }

    static void Write(ILGenerator il, IEnumerable<(Edge Edge, long Count)> counts)
    {
        il.Emit(OpCodes.Ldstr, "InstrumentationDataStart");
        foreach (var (edge, count) in counts)
            foreach (var number in (ReadOnlySpan<int>)[AllGiven, edge.From, Edge.Kind, 1, edge.To, (int)Math.Min(count, int.MaxValue)])
                il.Emit(OpCodes.Ldc_I4, number);
        il.Emit(OpCodes.Ldstr, "InstrumentationDataEnd");
    }

    static MethodBuilder Define(ModuleBuilder module, string name, Action<ILGenerator> body)
    {
        var method = module.DefineGlobalMethod(name, MethodAttributes.Public | MethodAttributes.Static, typeof(void), Type.EmptyTypes);
        var il = method.GetILGenerator();
        body(il);
        il.Emit(OpCodes.Ret);
        return method;
    }
}
