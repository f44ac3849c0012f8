// Adds comfort where there is script. Every page is whole without it.
