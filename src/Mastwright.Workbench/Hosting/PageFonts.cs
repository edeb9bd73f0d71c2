using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Fonts;
using Microsoft.AspNetCore.Http;

namespace Mastwright.Workbench.Hosting;

/// <summary>The fonts of the pages: those of the pictures, which the program carries already.</summary>
internal static class PageFonts
{
    internal static IResult Answer(HttpContext context, string name)
    {
        TextWeight? weight = name switch { "regular" => TextWeight.Regular, "semibold" => TextWeight.SemiBold, _ => null };
        if (weight is not { } one)
        {
            return Results.NotFound();
        }

        context.Response.Headers.CacheControl = "public, max-age=86400";
        return Results.Bytes(FontShelf.Bytes(one), "font/ttf");
    }
}
