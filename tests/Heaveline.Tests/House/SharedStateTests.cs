using System.Reflection;
using System.Runtime.CompilerServices;

namespace Heaveline.Tests.House;

public class SharedStateTests
{
    // Records of these are shared by all threads of a study.
    private static readonly string[] Shared = ["Quantities", "Cars", "Roads", "Elements", "Models"];

    [Fact]
    public void What_threads_share_remembers_in_one_word_at_most()
    {
        var torn = typeof(Heaveline.Models.RideModel).Assembly.GetTypes()
            .Where(type => type.IsClass && !type.IsDefined(typeof(CompilerGeneratedAttribute), false) && !type.ContainsGenericParameters)
            .Where(type => Shared.Any(room => type.Namespace == $"Heaveline.{room}" && !type.Name.Contains('<')))
            .Where(type => !OfOneThread.Contains(type.Name))
            .SelectMany(type => type.GetFields(BindingFlags.Instance | BindingFlags.Static | BindingFlags.NonPublic | BindingFlags.Public))
            .Where(field => !field.IsInitOnly && !field.IsLiteral && field.FieldType.IsValueType && Size(field.FieldType) > 8)
            .Select(field => $"{field.DeclaringType!.Name}.{field.Name}")
            .Distinct()
            .ToList();
        Assert.True(torn.Count == 0, string.Join(Environment.NewLine, torn));
    }

    // Made, used and dropped by one thread.
    private static readonly string[] OfOneThread = ["ProfileReader"];

    private static int Size(Type type) => (int)typeof(Unsafe).GetMethod(nameof(Unsafe.SizeOf))!.MakeGenericMethod(type).Invoke(null, null)!;
}
