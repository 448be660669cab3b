using Heaveline.Files.Yaml;

namespace Heaveline.Files.Cars;

/// <summary>A variant before it is put over its base.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Base">Name of the file that it changes, as written.</param>
/// <param name="Note">Its note.</param>
/// <param name="Change">The changed keys.</param>
internal sealed record VariantAsWritten(string Name, string Base, string? Note, Node Change);
