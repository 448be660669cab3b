using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;

namespace Heaveline.Web.Pages.Passes;

/// <summary>One car's crossing with its numbers.</summary>
/// <param name="Name">What it is called beside the other.</param>
/// <param name="Pass">The crossing.</param>
/// <param name="Measures">Its numbers.</param>
public sealed record Crossing(string Name, Pass Pass, PassMeasures Measures)
{
    /// <summary>Car and load.</summary>
    public RideModel Model => Pass.Model;

    /// <summary>Whether it ran to its end.</summary>
    public bool IsWhole => Pass.Outcome == PassOutcome.Completed;
}
