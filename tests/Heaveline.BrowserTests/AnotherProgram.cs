using System.Diagnostics.CodeAnalysis;

namespace Heaveline.BrowserTests;

/// <summary>The other half of the browser tests, so divided that both take about as long.</summary>
[CollectionDefinition(Name)]
[SuppressMessage("Naming", "CA1711", Justification = "The test library's term.")]
public sealed class AnotherProgram : ICollectionFixture<Served>
{
    public const string Name = "another program";
}
