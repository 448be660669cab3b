namespace Heaveline.Tests.Cluster;

/// <summary>Tests of several machines run one after another: of all at once each would wait for the others.</summary>
[CollectionDefinition(Name)]
public sealed class SeveralMachines
{
    public const string Name = "several machines";
}
