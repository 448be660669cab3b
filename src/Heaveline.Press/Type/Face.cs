namespace Heaveline.Press.Type;

/// <summary>The three faces the press carries.</summary>
internal enum Face
{
    Regular,
    Bold,
    Italic,
}
