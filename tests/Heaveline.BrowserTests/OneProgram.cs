using System.Diagnostics.CodeAnalysis;

namespace Heaveline.BrowserTests;

/// <summary>
/// Half of the browser tests share this program; <see cref="AnotherProgram"/> serves the other half meanwhile, from a garage of its own.
/// </summary>
[CollectionDefinition(Name)]
[SuppressMessage("Naming", "CA1711", Justification = "The test library's term.")]
public sealed class OneProgram : ICollectionFixture<Served>
{
    public const string Name = "one program";
}
