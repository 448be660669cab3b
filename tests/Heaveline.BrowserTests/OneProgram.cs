using System.Diagnostics.CodeAnalysis;

namespace Heaveline.BrowserTests;

/// <summary>All browser tests share one program and one browser.</summary>
[CollectionDefinition(Name)]
[SuppressMessage("Naming", "CA1711", Justification = "The test library's term.")]
public sealed class OneProgram : ICollectionFixture<Served>
{
    public const string Name = "one program";
}
