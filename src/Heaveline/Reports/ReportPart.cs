using System.Collections.Immutable;
using Heaveline.Answers;
using Heaveline.Figures;
using Heaveline.Quantities;

namespace Heaveline.Reports;

/// <summary>One part of a report under its heading.</summary>
public sealed record ReportPart
{
    /// <summary>The heading.</summary>
    public required string Heading { get; init => field = Checked.NotBlank(value, "Say what the part is about."); }

    /// <summary>What stands below it, in order; at least one block.</summary>
    public required ImmutableArray<Block> Blocks { get; init => field = Drawable.Some(value, "Give the part something to say."); }

    /// <summary>Sources of the methods behind its numbers.</summary>
    public ImmutableArray<Source> Sources { get; init => field = Drawable.Any(value); } = [];

    /// <summary>The same part in the units of a reader.</summary>
    /// <param name="units">The reader's units.</param>
    public ReportPart In(ReaderUnits units)
    {
        ArgumentNullException.ThrowIfNull(units);
        return units.IsImperial ? this with { Heading = units.Text(Heading), Blocks = [.. Blocks.Select(block => block.In(units))] } : this;
    }
}
