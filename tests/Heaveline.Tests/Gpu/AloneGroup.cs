namespace Heaveline.Tests.Gpu;

/// <summary>Tests that choose where all of the process measures its passes: nothing else may measure beside them.</summary>
[CollectionDefinition(Name, DisableParallelization = true)]
public sealed class AloneGroup
{
    public const string Name = "measures alone";
}
