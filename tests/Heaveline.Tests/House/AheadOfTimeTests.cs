using System.Diagnostics.CodeAnalysis;
using System.Reflection;

namespace Heaveline.Tests.House;

public class AheadOfTimeTests
{
    // The native program is these; its compiler is not on every machine, and calls nothing that it would refuse.
    public static TheoryData<string> Compiled => ["Heaveline", "Heaveline.Files", "Heaveline.Press"];

    [Theory]
    [MemberData(nameof(Compiled))]
    public void What_is_compiled_ahead_of_time_asks_for_no_code_at_run_time(string assembly)
    {
        var asking = TypeUses.Members(Assembly.Load(assembly)).Where(use => Asks(use.Member))
            .Select(use => $"{use.User.FullName}: {use.Member.DeclaringType}.{use.Member}").Distinct().ToList();
        Assert.True(asking.Count == 0, string.Join(Environment.NewLine, asking));
    }

    // As JsonArray's Add of anything does: [1.0, 2.0] for an array calls it.
    [Fact]
    public void A_number_added_to_an_array_is_seen()
    {
        System.Text.Json.Nodes.JsonArray array = [1.0];
        Assert.Single(array);
        Assert.Contains(TypeUses.Members(typeof(AheadOfTimeTests).Assembly), use => use.User == typeof(AheadOfTimeTests) && Asks(use.Member));
    }

    private static bool Asks(MemberInfo member)
    {
        // What a generic method asks for stands at its definition.
        MemberInfo defined = member is MethodInfo { IsGenericMethod: true } method ? method.GetGenericMethodDefinition() : member;
        return defined.IsDefined(typeof(RequiresDynamicCodeAttribute), false) || defined.IsDefined(typeof(RequiresUnreferencedCodeAttribute), false);
    }
}
