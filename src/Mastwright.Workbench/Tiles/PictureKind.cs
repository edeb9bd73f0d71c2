namespace Mastwright.Workbench.Tiles;

/// <summary>What a picture of the ground shows.</summary>
internal enum PictureKind
{
    /// <summary>What lies on the ground.</summary>
    Land,

    /// <summary>The light on its slopes alone, transparent where it is level.</summary>
    Relief,

    /// <summary>What lies on the ground in the light on its slopes.</summary>
    Ground,
}
