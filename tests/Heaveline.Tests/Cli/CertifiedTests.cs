using Heaveline.Tests.House;

namespace Heaveline.Tests.Cli;

/// <summary>What the certified run does not take, it refuses with the check that stands for it.</summary>
public class CertifiedTests
{
    [Fact]
    public void A_car_with_curved_laws_is_refused_with_each_of_them_and_where_they_are_checked()
    {
        var said = Spoken.Of("pass", "examples/garage/fern-saloon.yaml", "--certified");
        Assert.Equal((1, ""), (said.Code, said.Results));
        Assert.All(
            new[] { "front bump stop with an exponent", "front friction", "rear bump stop with an exponent", "rear friction" },
            element => Assert.Contains(element, said.Remarks, StringComparison.Ordinal));
        Assert.Contains("docs/validation.md, \"Whole passes\"", said.Remarks, StringComparison.Ordinal);
        Assert.Contains("\n## Whole passes\n", File.ReadAllText(Path.Combine(Checkout.Root, "docs", "validation.md")).ReplaceLineEndings("\n"));
    }
}
